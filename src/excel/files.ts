import type { PaneFiles } from "../pane/pane-host";

/** The open workbook's bytes, and other workbooks opened beside it: a web view downloads nothing. */
export const excelFiles = (): PaneFiles => ({
  current: async () => ({ name: nameOf(Office.context.document.url), bytes: await documentBytes() }),
  async handOver(name, bytes) {
    if (!name.endsWith(".xlsx")) throw new Error(`Cannot save ${name} from here: copy it instead`);
    await Excel.createWorkbook(base64(bytes));
    return `it is open as a new workbook: save it, as ${name} or under a name of your own`;
  },
});

/** On the web it is an address, with its signs encoded; elsewhere a path, in which a % is a %. */
function nameOf(url: string | null): string {
  const name = /[^/\\]+\.xls[xm]$/i.exec(url ?? "")?.[0] ?? "Workbook.xlsx";
  return /^https?:/i.test(url ?? "") ? decodeURIComponent(name) : name;
}

async function documentBytes(): Promise<Uint8Array> {
  const file = await asked<Office.File>((answer) => Office.context.document.getFileAsync(Office.FileType.Compressed, { sliceSize: 4_194_304 }, answer));
  try {
    const bytes = new Uint8Array(file.size);
    let at = 0;
    for (let i = 0; i < file.sliceCount; i++) {
      const { data } = await asked<Office.Slice>((answer) => file.getSliceAsync(i, answer));
      bytes.set(data as number[], at);
      at += (data as number[]).length;
    }
    return bytes;
  } finally {
    // Excel keeps two such copies at most.
    file.closeAsync();
  }
}

function asked<T>(ask: (answer: (result: Office.AsyncResult<T>) => void) => void): Promise<T> {
  return new Promise((resolve, reject) => {
    ask(({ status, value, error }) => {
      if (status === Office.AsyncResultStatus.Succeeded) resolve(value);
      else reject(new Error(`Cannot read the workbook's own file: ${error.message}`));
    });
  });
}

function base64(bytes: Uint8Array): string {
  let text = "";
  for (const byte of bytes) text += String.fromCharCode(byte);
  return btoa(text);
}
