import { catalogue } from "../../catalogue/catalogue";
import type { Entry } from "../../catalogue/entry";
import type { OpenTask, Stage } from "../page";
import { functionPage } from "./function-page";
import { listPage } from "./list-page";
import { memory } from "./memory";

export const openFunctions: OpenTask = (stage, leave) => {
  const opened = catalogue.find(({ id }) => id === memory.open);
  if (opened) showFunction(stage, opened, leave);
  else showList(stage, leave, null);
};

function showList(stage: Stage, leave: () => void, opened: string | null): void {
  memory.open = null;
  stage.show(listPage(catalogue, stage.host, (entry) => showFunction(stage, entry, leave), leave, opened));
}

function showFunction(stage: Stage, entry: Entry, leave: () => void): void {
  memory.open = entry.id;
  stage.show(functionPage(entry, catalogue, stage.host, () => showList(stage, leave, entry.id)));
}
