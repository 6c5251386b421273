/** Runs in the browser: the task beside a workbook file that computes. */
import { closeAMonth } from "../../src/pane/close-a-month/task";
import type { Page } from "../../src/pane/page";
import type { PaneHost } from "../../src/pane/pane-host";
import { openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";

const ask = new URLSearchParams(location.search);
const bytes = new Uint8Array(await (await fetch(`/book.xlsx?book=${ask.get("book") ?? ""}`)).arrayBuffer());
const port = new FilePort(openXlsx(bytes));
const isComma = ask.get("decimal") === ",";
const host: PaneHost = {
  port,
  separator: isComma ? ";" : ",",
  decimal: isComma ? "," : ".",
  files: { current: async () => ({ name: "lots.xlsx", bytes: port.file.bytes }), handOver: async () => "nowhere" },
};
const root = document.querySelector<HTMLElement>("#pane");
if (!root) throw new Error("The page has no place for the pane");
root.classList.add("lotwright-pane");
let current: Page | null = null;
let hasLeft = false;
const open = (): void => {
  void closeAMonth.load().then((task) => task(
    {
      host,
      show(page) {
        current?.close();
        current = page;
        root.replaceChildren(page.element);
        page.focus();
      },
    },
    () => (hasLeft = true),
  ));
};
root.addEventListener("keydown", (event) => {
  if (event.key === "Escape") current?.back();
});

const shop = {
  open,
  close: () => {
    current?.close();
    current = null;
    root.replaceChildren();
  },
  hasLeft: () => hasLeft,
  sheets: async () => (await port.sheets()).map(({ name }) => name),
  value: async (sheet: string, cell: string) => (await port.read({ sheet, range: cell }))[0]?.[0]?.value ?? null,
};
export type MonthShop = typeof shop;
declare global {
  interface Window {
    monthShop: MonthShop;
  }
}
window.monthShop = shop;
open();
