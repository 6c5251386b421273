import { refuseHeadings } from "../table-growth";
import type { AddedSheet, Additions, CellChange, StyledChange } from "./change";
import { addChart } from "./charts";
import { Draft } from "./draft";
import { emptyMetadata, METADATA_TYPE, withDynamicArrays } from "./dynamic-arrays";
import { FileFault } from "./file-fault";
import { withLinks } from "./links";
import { addSheet } from "./new-sheets";
import { writeNote } from "./notes";
import { addPicture } from "./pictures";
import { patchSheet } from "./patch-sheet";
import { removeSheet } from "./remove-sheet";
import { tablesWithHeadings } from "./sheet-facts";
import { styleFinder } from "./style-finder";
import { emptyStyles, Styles, STYLES_TYPE } from "./styles";
import { growTable } from "./tables";
import { withoutWebExtension } from "./web-extensions";
import type { Workbook } from "./workbook";
import { STRICT_SPREADSHEET } from "./xml-part";

/** The file with these changes; parts that none of them touches keep their very bytes. Null where nothing changes. */
export function patchWorkbook(workbook: Workbook, changes: readonly CellChange[], additions: Additions): Uint8Array | null {
  const draft = new Draft(workbook);
  new WorkbookPatch(workbook, draft).run(changes, additions);
  return draft.isEmpty ? null : draft.bytes();
}

class WorkbookPatch {
  readonly #folder: string;
  readonly #isStrict: boolean;
  /** The parts of the sheets that are added, by their names. */
  readonly #added = new Map<string, string>();
  #styles: Styles | undefined;
  #dynamicIndex: string | undefined;
  #formulasMoved = false;

  constructor(
    readonly workbook: Workbook,
    readonly draft: Draft,
  ) {
    this.#folder = workbook.part.slice(0, workbook.part.lastIndexOf("/") + 1);
    this.#isStrict = workbook.namespace === STRICT_SPREADSHEET;
  }

  run(changes: readonly CellChange[], { links = [], withoutSheets = [], withoutAddIn, sheets = [], notes = [], pictures = [], tables = [] }: Additions): void {
    const { workbook, draft } = this;
    for (const sheet of sheets) this.#addSheet(sheet);
    for (const [part, ofSheet] of this.#bySheet(changes)) {
      const headed = tablesWithHeadings(workbook.parts, part);
      for (const change of ofSheet) refuseHeadings(change, headed);
      this.#patch(part, this.#styled(part, ofSheet));
    }
    for (const growth of tables) growTable(draft, this.#part({ sheet: growth.sheet, cell: growth.tableRange }), growth);
    for (const note of notes) writeNote(draft, this.#part(note), this.#folder, note, { namespace: workbook.namespace, isStrict: this.#isStrict });
    for (const picture of pictures) addPicture(draft, this.#part({ sheet: picture.sheet, cell: picture.at }), this.#folder, picture, this.#isStrict);
    for (const [part, ofSheet] of this.#bySheet(links)) draft.write(part, withLinks(draft.text(part), ofSheet));
    for (const name of withoutSheets) removeSheet(workbook, draft, name);
    if (withoutAddIn) withoutWebExtension(draft, withoutAddIn);
    if (this.#styles) this.#writeStyles(this.#styles);
    if (this.#formulasMoved || withoutSheets.length > 0) this.#dropCalcChain();
  }

  #addSheet(sheet: AddedSheet): void {
    const { newSheet: name, cells } = sheet;
    const part = addSheet(this.workbook, this.draft, this.#folder, sheet, this.workbook.sheets.length + this.#added.size);
    this.#added.set(name.toLowerCase(), part);
    const changes = cells.map(({ look, numberFormat, wraps, align, merge: _merge, ...contents }): StyledChange => {
      const hasLook = look !== undefined || numberFormat !== undefined || wraps === true || align !== undefined;
      const style = hasLook ? this.#style().of({ ...(look && { look }), ...(numberFormat !== undefined && { numberFormat }), ...(wraps && { wraps }), ...(align && { align }) }) : undefined;
      return { sheet: name, ...contents, ...(style === undefined ? {} : { style }) };
    });
    if (changes.length > 0) this.#patch(part, changes);
    for (const chart of sheet.charts ?? []) addChart(this.draft, part, this.#folder, name, chart, cells, this.#isStrict);
  }

  #patch(part: string, changes: readonly StyledChange[]): void {
    const spills = changes.some(({ spill }) => spill !== undefined);
    if (spills) this.#dynamicIndex ??= this.#markDynamicArrays();
    const patched = patchSheet(this.draft.text(part), changes, this.#dynamicIndex ?? "");
    this.draft.write(part, patched.xml);
    this.#formulasMoved ||= patched.formulasMoved;
  }

  #bySheet<T extends { readonly sheet: string; readonly cell: string }>(changes: readonly T[]): Map<string, T[]> {
    const groups = new Map<string, T[]>();
    for (const change of changes) {
      const part = this.#part(change);
      const group = groups.get(part);
      if (group) group.push(change);
      else groups.set(part, [change]);
    }
    return groups;
  }

  #part({ sheet: name, cell }: { readonly sheet: string; readonly cell: string }): string {
    const added = this.#added.get(name.toLowerCase());
    if (added !== undefined) return added;
    const sheet = this.workbook.sheet(name);
    if (sheet.kind !== "worksheet")
      throw new FileFault(`Cannot change ${sheet.name}!${cell}: ${sheet.name} is a ${sheet.kind} and has no cells: choose another sheet`);
    return sheet.part;
  }

  /** Finds a place in the list of cell formats for what a change asks of its look. */
  #styled(part: string, changes: readonly CellChange[]): StyledChange[] {
    const looks = changes.flatMap(({ cell, like, numberFormat }) => (like !== undefined ? [like] : numberFormat !== undefined ? [cell] : []));
    if (looks.length === 0) return changes.map(({ numberFormat: _format, like: _like, ...change }) => change);
    const styleOf = styleFinder(this.draft.text(part), looks);
    return changes.map(({ numberFormat, like, ...change }) => {
      if (like === undefined && numberFormat === undefined) return change;
      const base = styleOf(like ?? change.cell);
      return { ...change, style: numberFormat === undefined ? base : this.#style().withNumberFormat(base, numberFormat) };
    });
  }

  #style(): Styles {
    if (this.#styles) return this.#styles;
    const { parts, part, namespace } = this.workbook;
    const styles = parts.related(part, "styles");
    return (this.#styles = new Styles(styles === undefined ? emptyStyles(namespace) : parts.text(styles)));
  }

  #writeStyles({ xml }: Styles): void {
    const { parts, part } = this.workbook;
    const styles = parts.related(part, "styles");
    if (styles !== undefined) this.draft.write(styles, xml);
    else this.draft.add(this.draft.has(`${this.#folder}styles.xml`) ? this.draft.freePart(this.#folder, "styles", "xml") : `${this.#folder}styles.xml`, xml, STYLES_TYPE, part, "styles");
  }

  #markDynamicArrays(): string {
    const { parts, part, namespace } = this.workbook;
    const metadata = parts.related(part, "sheetMetadata");
    const { index, xml } = withDynamicArrays(metadata === undefined ? emptyMetadata(namespace) : parts.text(metadata));
    const usual = `${this.#folder}metadata.xml`;
    if (metadata !== undefined) this.draft.write(metadata, xml);
    else this.draft.add(this.draft.has(usual) ? this.draft.freePart(this.#folder, "metadata", "xml") : usual, xml, METADATA_TYPE, part, "sheetMetadata");
    return index;
  }

  /**
   * The chain lists every formula cell in the order of the last calculation. Excel calls a file damaged whose chain names
   * a cell without a formula, and builds the chain anew where there is none; entries also inherit their sheet from the
   * one before, so taking out the whole part is safer than taking out lines. It stays while the same cells have formulas.
   */
  #dropCalcChain(): void {
    const { parts, part } = this.workbook;
    for (const { id, type, target } of parts.relationships(part)) if (type === "calcChain" && target !== null) this.draft.unlink(part, id, target);
  }
}
