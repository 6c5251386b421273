import { type Command, type CommandResult, CorePlugin, registries } from "@odoo/o-spreadsheet";
import { expect, it } from "vitest";
import { isOurs } from "../../src/engine/steps";
import { OpenBook } from "../../src/host/open-book";
import { contractBook } from "../workbook/contract-book";

let refuses = false;
class Refusing extends CorePlugin {
  override allowDispatch(command: Command): CommandResult {
    return (refuses && command.type === "DELETE_SHEET" && isOurs(command) ? "ForTheTest" : "Success") as CommandResult;
  }
}
registries.corePluginRegistry.add("refusingToDelete", Refusing);

it.each([false, true])("a sheet that the grid does not let go stays, and what the user did last is not undone in its place (hidden: %s)", async (isHidden) => {
  const { port, model } = new OpenBook("lots.xlsx", contractBook());
  const { undo } = await port.write([{ newSheet: "Quote", isHidden, cells: [{ cell: "A1", content: "x" }] }]);
  model.dispatch("UPDATE_CELL", { sheetId: model.getters.getSheetIds()[0] ?? "", col: 7, row: 7, content: "mine" });
  const typed = async (): Promise<unknown> => (await port.read({ sheet: "Lots", range: "H8" }))[0]?.[0]?.value;
  const names = async (): Promise<string[]> => (await port.sheets()).map(({ name }) => name);
  refuses = true;
  await expect(undo()).rejects.toThrow("the grid refuses (ForTheTest)");
  refuses = false;
  expect([await typed(), (await names()).at(-1)]).toEqual(["mine", "Quote"]);
  await undo();
  expect([await typed(), (await names()).includes("Quote")]).toEqual(["mine", false]);
});
