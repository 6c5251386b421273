import { mountPane } from "../pane/mount";
import { excelPaneHost } from "./pane-host";

/** The pane's own code begins here; it is loaded when the pane is first shown. */
export async function showPane(root: HTMLElement): Promise<void> {
  mountPane(root, await excelPaneHost());
}
