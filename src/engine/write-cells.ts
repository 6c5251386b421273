import { type Command, type CommandResult, type DispatchResult, type Model, UIPlugin, registries } from "@odoo/o-spreadsheet";
import { quietly } from "./quietly";

/** A cell of the grid and what is typed into it. */
export interface TypedCell {
  readonly sheetId: string;
  readonly col: number;
  readonly row: number;
  readonly content: string;
  readonly format?: string;
}

/** Types into many cells as one step of the grid's undo: into all of them or, when one refuses, into none. */
export function writeCells(model: Model, cells: readonly TypedCell[]): void {
  const dispatch = model.dispatch as unknown as (type: string, payload: Omit<WriteCells, "type">) => DispatchResult;
  const result = quietly(() => dispatch(WRITE_CELLS, { cells }));
  if (!result.isSuccessful) throw new Error(refusal(String(result.reasons[0])));
}

export function registerWriting(): void {
  if (!registries.featurePluginRegistry.contains(WRITE_CELLS)) registries.featurePluginRegistry.add(WRITE_CELLS, Writing);
}

const WRITE_CELLS = "LOT_WRITE_CELLS";

/** A command of ours: the grid's own list of commands cannot be added to, hence the conversions. */
interface WriteCells {
  readonly type: typeof WRITE_CELLS;
  readonly cells: readonly TypedCell[];
}

const cellsOf = (command: Command | WriteCells): readonly TypedCell[] => (command.type === WRITE_CELLS ? command.cells : []);

class Writing extends UIPlugin {
  override allowDispatch(command: Command): CommandResult {
    const reasons = cellsOf(command).flatMap((cell) => this.canDispatch("UPDATE_CELL", cell).reasons);
    return reasons.find((reason) => !HARMLESS.has(reason)) ?? ("Success" as CommandResult);
  }

  override handle(command: Command): void {
    for (const cell of cellsOf(command)) {
      this.#makeRoom(cell);
      this.dispatch("UPDATE_CELL", cell);
    }
  }

  #makeRoom({ sheetId, col, row }: TypedCell): void {
    const { getters } = this;
    const grow = (dimension: "COL" | "ROW", size: number, needed: number): void => {
      if (needed <= size) return;
      const sheetName = getters.getSheetName(sheetId);
      this.dispatch("ADD_COLUMNS_ROWS", { sheetId, sheetName, dimension, base: size - 1, quantity: needed - size, position: "after" });
    };
    grow("COL", getters.getNumberCols(sheetId), col + 1);
    grow("ROW", getters.getNumberRows(sheetId), row + 1);
  }
}

/** A cell that holds this already, and one beyond the edge of the grid, which grows. */
const HARMLESS: ReadonlySet<string> = new Set(["NoChanges", "TargetOutOfSheet"]);

const refusal = (reason: string): string =>
  reason === "SheetLocked"
    ? "Cannot write to this sheet: it is protected: take the protection off in Excel first"
    : `Cannot write to this sheet: the grid refuses (${reason})`;
