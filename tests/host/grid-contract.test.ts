import { type Command, type CommandResult, CorePlugin, isCoreCommand, registries } from "@odoo/o-spreadsheet";
import { isOurs } from "../../src/engine/steps";
import { OpenBook } from "../../src/host/open-book";
import { contract } from "../workbook/contract";
import { contractBook } from "../workbook/contract-book";

/** Refuses the n-th command that is done as a step of ours. */
let left: number | null = null;
class Failing extends CorePlugin {
  override allowDispatch(command: Command): CommandResult {
    if (left === null || !isCoreCommand(command) || !isOurs(command)) return "Success" as CommandResult;
    return (left-- === 0 ? "ForTheTest" : "Success") as CommandResult;
  }
}
registries.corePluginRegistry.add("failingForTheTest", Failing);

contract(
  "the grid",
  async () => {
    const book = new OpenBook("contract.xlsx", contractBook());
    return {
      port: book.port,
      async state() {
        const { sheets } = book.model._exportData(false);
        const shown = sheets.map(({ name, cells, formats, merges, figures, tables, isVisible }) => ({ name, cells, formats: Object.keys(formats), merges, figures, tables, isVisible }));
        return { shown, saved: Buffer.from(book.patched()).toString("base64") };
      },
      async failAt(n) {
        left = n;
      },
    };
  },
  { refused: "=1+", computes: true },
);
