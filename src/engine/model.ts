import { type Command, type CommandResult, CorePlugin, Model, type WorkbookData, registries } from "@odoo/o-spreadsheet";
import { provideGroupBy } from "./group-by";
import { registerKept } from "./kept";
import { quietly } from "./quietly";
import { registerFunctions, registerUnknownNames } from "./register";
import { registerSteps } from "./steps";

/** A grid's model that knows our functions. The data is the grid's own; what it leaves out is as in an empty workbook. */
export function modelOf(data: Partial<WorkbookData>): Model {
  provideGroupBy();
  registerFunctions();
  registerPlugin();
  registerKept();
  registerSteps();
  for (const sheet of data.sheets ?? [])
    for (const content of Object.values(sheet.cells)) if (typeof content === "string" && content.startsWith("=")) registerUnknownNames(content);
  return quietly(() => new Model(data));
}

/** Sees every formula before it is compiled, however it comes into a cell. */
class UnknownNames extends CorePlugin {
  override allowDispatch(command: Command): CommandResult {
    if (command.type === "UPDATE_CELL" && command.content?.startsWith("=")) registerUnknownNames(command.content);
    return "Success" as CommandResult;
  }
}

function registerPlugin(): void {
  if (!registries.corePluginRegistry.contains("lotUnknownNames")) registries.corePluginRegistry.add("lotUnknownNames", UnknownNames);
}
