import { damaged, FileFault } from "./file-fault";
import { fromStored } from "./stored-formula";
import { findWorkbook, type Package } from "./package";
import { isOn } from "./sheet-pieces";
import { readRoot, Tags, textBetween } from "./xml";

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
    this.namespace = namespace;

    const links = new Map(parts.relationships(this.part).map((link) => [link.id, link]));
    const sheets: SheetEntry[] = [];
    const names: { name: string; formula: string; local: string | undefined; hidden: boolean }[] = [];
    let date1904 = false;
    const tags = new Tags(xml);
    while (tags.next()) {
      if (tags.kind === "close") continue;
      if (tags.name === `${prefix}workbookPr`) date1904 = isOn(tags.attribute("date1904"));
      else if (tags.name === `${prefix}sheet`) {
        const id = tags.attributes().find((attribute) => attribute.name.endsWith(":id"))?.value ?? "";
        const link = links.get(id);
        const title = tags.attribute("name") ?? "";
        const kind = KINDS[link?.type ?? ""];
        if (!link?.target || !kind || !parts.has(link.target)) throw damaged(`its sheet ${title} is missing`);
        if (sheets.some(({ part }) => part === link.target)) throw damaged(`two of its sheets, one of them ${title}, are one part`);
        sheets.push({ name: title, state: stateOf(tags.attribute("state")), kind, part: link.target });
      } else if (tags.name === `${prefix}definedName`) {
        const entry = { name: tags.attribute("name") ?? "", local: tags.attribute("localSheetId"), hidden: isOn(tags.attribute("hidden")) };
        const start = tags.end;
        tags.skip();
        names.push({ ...entry, formula: `=${fromStored(textBetween(xml, start, tags.start))}` });
      }
    }
    this.sheets = sheets;
    this.date1904 = date1904;
    this.definedNames = names.map(({ name, formula, local, hidden }) => ({ name, formula, hidden, sheet: local === undefined ? null : (sheets[Number(local)]?.name ?? null) }));
  }

  /** Found as Excel finds it: case does not matter. */
  sheet(name: string): SheetEntry {
    const found = this.sheets.find((sheet) => sheet.name === name) ?? this.sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
    if (!found) throw new FileFault(`Cannot find the sheet ${name}: the workbook has ${this.sheets.map((sheet) => sheet.name).join(", ")}`);
    return found;
  }
}

const stateOf = (state: string | undefined): SheetEntry["state"] => (state === "hidden" || state === "veryHidden" ? state : "visible");
