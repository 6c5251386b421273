/** Runs in the browser: the pane beside a workbook that lives in memory. */
import { mountPane } from "../../src/pane/mount";
import type { HostColours, PaneHost } from "../../src/pane/pane-host";
import { MemoryPort } from "../pane/memory-port";

const ask = new URLSearchParams(location.search);
const port = new MemoryPort({
  B4: 10,
  B5: "lb",
  B6: 925,
  C4: 2.5,
  C5: 1,
  "Prices!B4": 24,
  D4: { value: "#DIV/0!", formula: "=1/0", error: true, message: "Cannot divide by zero" },
});
let tell: ((colours: HostColours) => void) | undefined;
const host: PaneHost = {
  port,
  separator: ask.get("separator") === ";" ? ";" : ",",
  decimal: ask.get("decimal") === "," ? "," : ".",
  onColours(listener) {
    tell = listener;
    return () => (tell = undefined);
  },
};
const root = document.querySelector<HTMLElement>("#pane");
if (!root) throw new Error("The page has no place for the pane");

const shop = {
  port,
  unmount: mountPane(root, host),
  mount: () => void (shop.unmount = mountPane(root, host)),
  colours: (colours: HostColours) => tell?.(colours),
};
export type Shop = typeof shop;
declare global {
  interface Window {
    shop: Shop;
  }
}
window.shop = shop;
