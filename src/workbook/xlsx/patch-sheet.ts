import { type Area, areaText, isInside, readArea } from "./address";
import type { StyledChange } from "./change";
import { readFormulaGroups } from "./formula-groups";
import { planCells } from "./plan-cells";
import { type Columns, type Dimension, type Row, sheetPieces, type StoredCell } from "./sheet-pieces";
import { type CellPlan, newCell, rewrittenCell, type SheetWords } from "./write-cell";
import { attributeEdits, type Edit, edited } from "./xml-edits";
import { readRoot } from "./xml-part";
import { Tags } from "./xml-tags";

export interface PatchedSheet {
  readonly xml: string;
  /** True where a cell gained or lost a formula, or its formula changed in kind. */
  readonly formulasMoved: boolean;
}

/** One pass over a sheet: what the plan names is replaced or put in its place in order, every other character stays. */
export function patchSheet(xml: string, changes: readonly StyledChange[], dynamicIndex: string): PatchedSheet {
  const groups = readFormulaGroups(xml);
  const plan = planCells(changes, groups);
  const { prefix } = readRoot(new Tags(xml));
  return new SheetPatch(xml, plan.cells, plan.released, { prefix, dynamicIndex, masters: groups.masters }).run();
}

class SheetPatch {
  readonly #edits: Edit[] = [];
  readonly #columns: Columns[] = [];
  #dimension: Dimension | undefined;
  #inserted: Area | undefined;
  #row: Row | undefined;
  #rowInserted: Area | undefined;
  #next = 0;
  #formulasMoved = false;

  constructor(
    readonly xml: string,
    readonly cells: readonly CellPlan[],
    readonly released: readonly Area[],
    readonly words: SheetWords,
  ) {}

  run(): PatchedSheet {
    const { prefix } = this.words;
    for (const piece of sheetPieces(this.xml))
      switch (piece.kind) {
        case "dimension":
          this.#dimension = piece;
          break;
        case "columns":
          this.#columns.push(piece);
          break;
        case "data":
          if (piece.isEmpty) this.#fillEmpty(piece, `${prefix}sheetData`, this.#rowsBefore(Infinity));
          break;
        case "row":
          this.#insert(piece.start, this.#rowsBefore(piece.row));
          this.#row = piece;
          this.#rowInserted = undefined;
          if (!piece.isEmpty) break;
          this.#fillEmpty(piece, `${prefix}row`, this.#cellsBefore(piece.row, Infinity, piece.style));
          this.#widenSpans();
          break;
        case "cell":
          this.#insert(piece.start, this.#cellsBefore(piece.row, piece.column, this.#row?.style));
          this.#meet(piece);
          break;
        case "row-end":
          if (this.#row) this.#insert(piece.at, this.#cellsBefore(this.#row.row, Infinity, this.#row.style));
          this.#widenSpans();
          break;
        case "data-end":
          this.#insert(piece.at, this.#rowsBefore(Infinity));
          break;
      }
    this.#widenDimension();
    return { xml: edited(this.xml, this.#edits), formulasMoved: this.#formulasMoved };
  }

  #meet(cell: StoredCell): void {
    const planned = this.cells[this.#next];
    if (planned?.row === cell.row && planned.column === cell.column) {
      this.#next++;
      this.#replace(cell, planned);
    } else if (cell.value && !cell.formula && this.released.some((area) => isInside(cell, area)))
      this.#replace(cell, { row: cell.row, column: cell.column, content: { value: null } });
  }

  #replace(cell: StoredCell, plan: CellPlan): void {
    const before = cell.formula && (cell.formula.type === "array" ? "array" : "plain");
    if (plan.formula !== undefined && before !== kindOf(plan)) this.#formulasMoved = true;
    this.#edits.push({ start: cell.start, end: cell.end, text: rewrittenCell(this.xml, cell, plan, this.words) });
  }

  /** New rows for what the plan still names above a row. */
  #rowsBefore(row: number): string {
    const { prefix } = this.words;
    let rows = "";
    for (let plan = this.cells[this.#next]; plan && plan.row < row; plan = this.cells[this.#next]) {
      const cells = this.#cellsBefore(plan.row, Infinity, undefined);
      if (cells) rows += `<${prefix}row r="${plan.row}">${cells}</${prefix}row>`;
    }
    return rows;
  }

  /** New cells for what the plan still names to the left of a column. */
  #cellsBefore(row: number, column: number, rowStyle: string | undefined): string {
    let cells = "";
    for (let plan = this.cells[this.#next]; plan?.row === row && plan.column < column; plan = this.cells[this.#next]) {
      this.#next++;
      const cell = newCell(plan, rowStyle ?? this.#columnStyle(plan.column), this.words);
      if (cell === "") continue;
      if (kindOf(plan)) this.#formulasMoved = true;
      this.#inserted = widened(this.#inserted, plan);
      this.#rowInserted = widened(this.#rowInserted, plan);
      cells += cell;
    }
    return cells;
  }

  #columnStyle(column: number): string | undefined {
    return this.#columns.find(({ min, max }) => column >= min && column <= max)?.style;
  }

  #insert(at: number, text: string): void {
    if (text) this.#edits.push({ start: at, end: at, text });
  }

  /** Opens an element that was empty, to hold what is new in it. */
  #fillEmpty({ end }: { end: number }, name: string, text: string): void {
    if (text) this.#edits.push({ start: end - "/>".length, end, text: `>${text}</${name}>` });
  }

  /** The hint of which columns a row uses must not leave out a new cell. */
  #widenSpans(): void {
    if (!this.#row || !this.#rowInserted) return;
    const { left, right } = this.#rowInserted;
    const widen = (spans: string): string => {
      const [first = NaN, last = NaN] = spans.split(":").map(Number);
      return first >= 1 && last >= first ? `${Math.min(first, left)}:${Math.max(last, right)}` : spans;
    };
    this.#edits.push(...attributeEdits(this.xml, this.#row.start, "spans", widen));
  }

  #widenDimension(): void {
    const inserted = this.#inserted;
    if (!this.#dimension || !inserted) return;
    const widen = (ref: string): string => {
      const area = readArea(ref);
      return area ? areaText(union(area, inserted)) : ref;
    };
    this.#edits.push(...attributeEdits(this.xml, this.#dimension.start, "ref", widen));
  }
}

const kindOf = ({ formula }: CellPlan): "array" | "plain" | null => (formula ? (formula.kind === "spill" ? "array" : "plain") : null);

const union = (a: Area, b: Area): Area => ({
  top: Math.min(a.top, b.top),
  left: Math.min(a.left, b.left),
  bottom: Math.max(a.bottom, b.bottom),
  right: Math.max(a.right, b.right),
});

function widened(area: Area | undefined, { row, column }: CellPlan): Area {
  const cell = { top: row, left: column, bottom: row, right: column };
  return area ? union(area, cell) : cell;
}
