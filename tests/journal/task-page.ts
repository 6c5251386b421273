/** Runs in the browser: a task beside a workbook file that computes. */
import { theJournal } from "../../src/pane/journal/task";
import { mountPane } from "../../src/pane/mount";
import type { Page } from "../../src/pane/page";
import type { PaneHost } from "../../src/pane/pane-host";
import { reconcileLots } from "../../src/pane/reconcile/task";
import { repairFormulas } from "../../src/pane/repair/task";
import { FilePort } from "../../src/workbook/file-port";
import { openXlsx } from "../../src/workbook/file";
import type { CellWrite, Place } from "../../src/workbook/port";

const ask = new URLSearchParams(location.search);
const bytes = new Uint8Array(await (await fetch(`/book.xlsx?book=${ask.get("book") ?? ""}`)).arrayBuffer());
const port = new FilePort(openXlsx(bytes));
const isComma = ask.get("decimal") === ",";
const selected: Place[] = [];
const files: { name: string; text: string }[] = [];
/** FilePort has nobody who looks at its cells. */
port.select = async (place) => void selected.push(place);
const listeners = new Set<(place: Place) => void>();
Object.assign(port, {
  onSelection(listener: (place: Place) => void) {
    listeners.add(listener);
    return () => listeners.delete(listener);
  },
});
const host: PaneHost = {
  port,
  separator: isComma ? ";" : ",",
  decimal: isComma ? "," : ".",
  files: {
    current: async () => ({ name: "lots.xlsx", bytes: port.file.bytes }),
    async handOver(name, handed) {
      if (ask.has("refuses")) throw new Error(`Cannot save ${name} from here: copy it instead`);
      files.push({ name, text: new TextDecoder().decode(handed) });
      return "look for it among your downloads";
    },
  },
};
const root = document.querySelector<HTMLElement>("#pane");
if (!root) throw new Error("The page has no place for the pane");
root.classList.add("lotwright-pane");
let current: Page | null = null;
let hasLeft = false;
const open = async (): Promise<void> => {
  const task = await ({ journal: theJournal, repair: repairFormulas }[ask.get("task") ?? ""] ?? reconcileLots).load();
  const stage = {
    host,
    show(page: Page) {
      current?.close();
      current = page;
      root.replaceChildren(page.element);
      page.focus();
    },
  };
  task(stage, () => (hasLeft = true));
};
root.addEventListener("keydown", (event) => {
  if (event.key === "Escape" && !event.defaultPrevented) current?.back();
});

const shop = {
  open,
  close: () => {
    current?.close();
    current = null;
    root.replaceChildren();
  },
  move: (sheet: string, range: string) => {
    port.selection = async () => ({ sheet, range });
    for (const listener of listeners) listener({ sheet, range });
  },
  hasLeft: () => hasLeft,
  selected: () => selected.map(({ sheet, range }) => `${sheet}!${range}`),
  files: () => files,
  write: async (...changes: CellWrite[]) => void (await port.write(changes)),
  sheets: async () => (await port.sheets()).map(({ name }) => name),
  formula: async (sheet: string, cell: string) => (await port.read({ sheet, range: cell }))[0]?.[0]?.formula ?? null,
  value: async (sheet: string, cell: string) => (await port.read({ sheet, range: cell }))[0]?.[0]?.value ?? null,
};
export type TaskShop = typeof shop;
declare global {
  interface Window {
    taskShop: TaskShop;
  }
}
window.taskShop = shop;
if (ask.get("task") === "pane") mountPane(root, host);
else void open();
