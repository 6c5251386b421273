import { damaged, FileFault } from "./file-fault";
import { Tags } from "./xml-tags";

const MOST_CHARACTERS = 500_000_000;

/** A part's bytes as text, from which the same bytes can be written again. */
export function decodeXml(bytes: Uint8Array, part: string): string {
  if (bytes.length > MOST_CHARACTERS)
    throw new FileFault(`Cannot read the workbook: its part ${part} is larger than 500 MB: split the sheet into smaller ones`);
  let xml;
  try {
    xml = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    throw new FileFault(`Cannot read the workbook: its part ${part} is not written in UTF-8: open it in Excel and save it again`);
  }
  const encoding = /^\uFEFF?<\?xml[^>]*encoding\s*=\s*["']([^"']*)/.exec(xml)?.[1] ?? "utf-8";
  if (!/^(?:utf-?8|us-ascii)$/i.test(encoding))
    throw new FileFault(`Cannot read the workbook: its part ${part} is written in ${encoding}: open it in Excel and save it again`);
  refuseDeclarations(xml);
  return xml;
}

/** Entities can only be declared before the root element: stepping onto that one passes them all. */
const refuseDeclarations = (xml: string): boolean => new Tags(xml).next();

export const encodeXml = (xml: string): Uint8Array => new TextEncoder().encode(xml);

/** The words a main part is written in: its namespace may stand under any prefix, and has a strict twin. */
export interface Root {
  /** "" or "x:". */
  readonly prefix: string;
  readonly name: string;
  readonly namespace: string;
}

export const SPREADSHEET = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
export const STRICT_SPREADSHEET = "http://purl.oclc.org/ooxml/spreadsheetml/main";

/** Steps onto the root element, which must be one of a spreadsheet's. */
export function readRoot(tags: Tags): Root {
  if (!tags.next()) throw damaged("a part of it holds no XML");
  const colon = tags.name.indexOf(":");
  const prefix = tags.name.slice(0, colon + 1);
  const namespace = tags.attribute(colon < 0 ? "xmlns" : `xmlns:${tags.name.slice(0, colon)}`);
  if (namespace !== SPREADSHEET && namespace !== STRICT_SPREADSHEET)
    throw new FileFault("Cannot read the workbook: a part of it is not written in the words of a spreadsheet: open it in Excel and save it again as .xlsx");
  return { prefix, name: tags.name.slice(colon + 1), namespace };
}
