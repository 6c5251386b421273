/** What is wrong with a file, or with a change asked of it, in one sentence that can be shown as it stands. */
export class FileFault extends Error {
  override readonly name = "FileFault";
}

export const damaged = (what: string): FileFault =>
  new FileFault(`Cannot read the workbook: it is damaged, ${what}: take a fresh copy, or open it in Excel and save it again`);

export const tooLarge = (what: string): FileFault =>
  new FileFault(`Cannot open the file: ${what}: split it into smaller workbooks`);
