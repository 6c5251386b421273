import { associate } from "./associate";
import { onShown } from "./shown";
import { loadWithWorkbook } from "./load-with-workbook";

// Before anything else: Excel may already wait for a cell.
associate(loadWithWorkbook);

const root = document.getElementById("pane") as HTMLElement;
let pane: Promise<void> | null = null;

function show(): void {
  pane ??= import(/* webpackChunkName: "pane" */ "./show-pane")
    .then(({ showPane }) => showPane(root))
    .catch((error: unknown) => {
      pane = null;
      console.error(error);
      root.textContent = "The pane could not be loaded: see that this machine is online, then close the pane and open it again. The functions in the cells work without it.";
    });
}

async function start(): Promise<void> {
  if (typeof Office === "undefined") {
    root.textContent = "Office's own script could not be loaded, so the functions cannot reach Excel: see that this machine is online, then close the pane and open it again.";
    return;
  }
  const { host } = await Office.onReady();
  if (host === Office.HostType.Excel) onShown(show);
  else root.textContent = "This is Lotwright's pane for Excel. Load the manifest in Excel, then open the pane from the Home tab.";
}

void start();
