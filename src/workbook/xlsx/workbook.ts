import { damaged, FileFault } from "./file-fault";
import { fromStored } from "./stored-formula";
import { findWorkbook, type Package } from "./package";
import { isOn } from "./sheet-pieces";
import { readRoot } from "./xml-part";
import { elements, Tags } from "./xml-tags";
import { textBetween } from "./xml-text";

export interface SheetEntry {
  readonly name: string;
  readonly state: "visible" | "hidden" | "veryHidden";
  /** Only a worksheet has cells. */
  readonly kind: "worksheet" | "chart sheet" | "dialog sheet" | "macro sheet";
  readonly part: string;
}

export interface DefinedName {
  readonly name: string;
  /** What it stands for, in en-US form with its equals sign. */
  readonly formula: string;
  /** The sheet on which alone it holds, or null for the whole workbook. */
  readonly sheet: string | null;
  readonly hidden: boolean;
}

const KINDS: Readonly<Record<string, SheetEntry["kind"]>> = {
  worksheet: "worksheet",
  chartsheet: "chart sheet",
  dialogsheet: "dialog sheet",
  xlMacrosheet: "macro sheet",
  xlIntlMacrosheet: "macro sheet",
};

/** The main part of a workbook: its sheets and names. */
export class Workbook {
  readonly part: string;
  readonly namespace: string;
  readonly sheets: readonly SheetEntry[];
  readonly definedNames: readonly DefinedName[];
  /** Days are counted from 1904 in files that began on an old Mac. */
  readonly date1904: boolean;

  constructor(readonly parts: Package) {
    this.part = findWorkbook(parts);
    const xml = parts.text(this.part);
    const { prefix, name, namespace } = readRoot(new Tags(xml));
    if (name !== "workbook") throw damaged("its main part is not a workbook");
    const [properties] = elements(xml, (element) => element === `${prefix}workbookPr`);
    this.date1904 = isOn(properties?.attribute("date1904"));
    this.namespace = namespace;
    this.sheets = readSheets(xml, prefix, parts, this.part);
    this.definedNames = readNames(xml, prefix, this.sheets);
  }

  /** Found as Excel finds it: case does not matter. */
  sheet(name: string): SheetEntry {
    const found =
      this.sheets.find((sheet) => sheet.name === name) ?? this.sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
    if (!found) throw new FileFault(`Cannot find the sheet ${name}: the workbook has ${this.sheets.map((sheet) => sheet.name).join(", ")}`);
    return found;
  }
}

function readSheets(xml: string, prefix: string, parts: Package, workbook: string): SheetEntry[] {
  const links = new Map(parts.relationships(workbook).map((link) => [link.id, link]));
  const sheets: SheetEntry[] = [];
  for (const tag of elements(xml, (name) => name === `${prefix}sheet`)) {
    const name = tag.attribute("name") ?? "";
    const link = links.get(tag.attributes().find((attribute) => attribute.name.endsWith(":id"))?.value ?? "");
    const kind = KINDS[link?.type ?? ""];
    if (!link?.target || !kind || !parts.has(link.target)) throw damaged(`its sheet ${name} is missing`);
    if (sheets.some((sheet) => sheet.name.toLowerCase() === name.toLowerCase())) throw damaged(`two of its sheets are named ${name}`);
    if (sheets.some(({ part }) => part === link.target)) throw damaged(`two of its sheets, one of them ${name}, are one part`);
    sheets.push({ name, state: stateOf(tag.attribute("state")), kind, part: link.target });
  }
  return sheets;
}

function readNames(xml: string, prefix: string, sheets: readonly SheetEntry[]): DefinedName[] {
  const names: DefinedName[] = [];
  for (const tag of elements(xml, (name) => name === `${prefix}definedName`)) {
    const name = tag.attribute("name") ?? "";
    const local = tag.attribute("localSheetId");
    const sheet = local === undefined ? null : (sheets[Number(local)]?.name ?? null);
    const hidden = isOn(tag.attribute("hidden"));
    const start = tag.end;
    tag.skip();
    names.push({ name, formula: `=${fromStored(textBetween(xml, start, tag.start))}`, sheet, hidden });
  }
  return names;
}

const stateOf = (state: string | undefined): SheetEntry["state"] => (state === "hidden" || state === "veryHidden" ? state : "visible");
