import { type Command, type CommandResult, CorePlugin, type DispatchResult, type Model, registries } from "@odoo/o-spreadsheet";
import { isOurs } from "../engine/steps";

/** What changes cell contents, which saving writes into the file. */
const SAVED = ["UPDATE_CELL", "UPDATE_CELL_POSITION", "CLEAR_CELL", "CLEAR_CELLS", "DELETE_CONTENT", "MOVE_RANGES"];
/** What changes the look alone. It comes along with a paste or a drag, so it is let through, and named before saving. */
const LEFT_BEHIND = [
  "SET_FORMATTING", "CLEAR_FORMATTING", "SET_ZONE_BORDERS", "SET_BORDER", "SET_BORDERS_ON_TARGET", "RESIZE_COLUMNS_ROWS", "UPDATE_FIGURE",
  "FOLD_HEADER_GROUP", "UNFOLD_HEADER_GROUP", "FOLD_ALL_HEADER_GROUPS", "UNFOLD_ALL_HEADER_GROUPS", "FOLD_HEADER_GROUPS_IN_ZONE", "UNFOLD_HEADER_GROUPS_IN_ZONE",
];
const ALLOWED: ReadonlySet<string> = new Set([...SAVED, ...LEFT_BEHIND]);

const REFUSED = "LotNotInThisGrid" as CommandResult;

/** Refuses what a saved file could not hold, at once instead of when the work is done. What the port does, the file can hold. */
class Refusals extends CorePlugin {
  override allowDispatch(command: Command): CommandResult {
    return ALLOWED.has(command.type) || isOurs(command) || this.#growsAtItsEnd(command) ? ("Success" as CommandResult) : REFUSED;
  }

  /** More empty cells at the end of a sheet are no change: in Excel they are there already. */
  #growsAtItsEnd(command: Command): boolean {
    if (command.type !== "ADD_COLUMNS_ROWS" || command.position !== "after") return false;
    const { getters } = this;
    const size = command.dimension === "ROW" ? getters.getNumberRows(command.sheetId) : getters.getNumberCols(command.sheetId);
    return command.base === size - 1;
  }
}

/** Must have run before the grid's model is made. */
export function registerRefusals(): void {
  if (!registries.corePluginRegistry.contains("lotRefusals")) registries.corePluginRegistry.add("lotRefusals", Refusals);
}

/** Tells of every refusal in a sentence. */
export function onRefusal(model: Model, tell: (sentence: string) => void): void {
  model.on("command-rejected", {}, (rejected) => {
    const { command, result } = rejected as unknown as { readonly command: Command; readonly result: DispatchResult };
    if ((result.reasons as readonly CommandResult[]).includes(REFUSED))
      tell(`Cannot ${DEEDS.get(command.type) ?? "do this"} here: saving changes cell contents alone: do it in Excel, then open the file again`);
  });
}

const DEEDS: ReadonlyMap<string, string> = new Map([
  ["ADD_COLUMNS_ROWS", "insert rows or columns"],
  ["REMOVE_COLUMNS_ROWS", "delete rows or columns"],
  ["MOVE_COLUMNS_ROWS", "move rows or columns"],
  ["HIDE_COLUMNS_ROWS", "hide rows or columns"],
  ["UNHIDE_COLUMNS_ROWS", "show hidden rows or columns"],
  ["CREATE_SHEET", "add a sheet"],
  ["DELETE_SHEET", "delete a sheet"],
  ["DUPLICATE_SHEET", "copy a sheet"],
  ["RENAME_SHEET", "rename a sheet"],
  ["MOVE_SHEET", "move a sheet"],
  ["COLOR_SHEET", "colour a sheet's tab"],
  ["HIDE_SHEET", "hide a sheet"],
  ["SHOW_SHEET", "show a hidden sheet"],
  ["ADD_MERGE", "merge cells"],
  ["REMOVE_MERGE", "split merged cells"],
  ["DELETE_FIGURE", "delete a chart or picture"],
  ["CREATE_CHART", "add a chart"],
  ["UPDATE_CHART", "change a chart"],
  ["CREATE_IMAGE", "add a picture"],
  ["CREATE_TABLE", "make a table"],
  ["CREATE_NAMED_RANGE", "give a range a name"],
  ["UPDATE_NAMED_RANGE", "change a name"],
  ["DELETE_NAMED_RANGE", "delete a name"],
]);
