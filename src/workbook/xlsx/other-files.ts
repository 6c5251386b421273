import { FileFault } from "./file-fault";

/** Says what a file is that is no zip archive, as every .xlsx is. */
export function refuseOtherFiles(bytes: Uint8Array): void {
  if (bytes.length === 0)
    throw new FileFault("Cannot open the file: it is empty: choose a workbook that was saved as .xlsx");
  if (startsWith(bytes, COMPOUND_FILE)) {
    if (holds(bytes, "EncryptedPackage")) throw new FileFault(LOCKED);
    const isOldWorkbook = holds(bytes, "Workbook") || holds(bytes, "Book");
    throw new FileFault(
      `Cannot open the file: it is ${isOldWorkbook ? "a workbook of the old .xls kind" : "an Office file of an old kind"}: open it in Excel and save it as .xlsx`,
    );
  }
  if (!startsWith(bytes, ZIP_FILE))
    throw new FileFault("Cannot open the file: it is not an .xlsx workbook, whatever its name: open it in a spreadsheet program and save it as .xlsx");
}

const LOCKED =
  "Cannot open the workbook: it is locked with a password: open it in Excel, remove the password (File, Info, Protect Workbook) and save it";

const COMPOUND_FILE = [0xd0, 0xcf, 0x11, 0xe0];
const ZIP_FILE = [0x50, 0x4b];

const startsWith = (bytes: Uint8Array, mark: readonly number[]): boolean => mark.every((byte, i) => bytes[i] === byte);

/** A compound file keeps the names of its streams in two-byte letters. */
function holds(bytes: Uint8Array, stream: string): boolean {
  const letters = [...stream].flatMap((letter) => [letter.charCodeAt(0), 0]);
  const [first = 0] = letters;
  for (let at = bytes.indexOf(first); at >= 0; at = bytes.indexOf(first, at + 1))
    if (letters.every((byte, i) => bytes[at + i] === byte)) return true;
  return false;
}
