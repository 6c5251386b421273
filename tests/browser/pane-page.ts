/** Runs in the browser: the pane beside a workbook that lives in memory. */
import { mountPane } from "../../src/pane/mount";
import type { HostColours, PaneFiles, PaneHost } from "../../src/pane/pane-host";
import { MemoryPort } from "../pane/memory-port";

const ask = new URLSearchParams(location.search);
const port = new MemoryPort({
  B4: 10,
  B5: "lb",
  B6: 925,
  C4: 2.5,
  C5: 1,
  "Prices!B4": 24,
  "Lots!A1": "Lot",
  "Lots!B1": "Gross (g)",
  "Lots!C1": "Tare (g)",
  "Lots!D1": "Net (g)",
  "Lots!E1": "Fineness",
  "Lots!F1": "Fine (ozt)",
  "Lots!G1": "Copper (lb)",
  "Lots!A2": "L-104",
  "Lots!B2": 1250,
  "Lots!C2": 9.5,
  "Lots!D2": 1240.5,
  "Lots!E2": 925,
  "Lots!F2": { value: 36.89177603450428, formula: '=LOT.FINEWEIGHT(B2-C2,"g",E2)', error: false },
  "Lots!G2": { value: 12.28, formula: '=ROUND(LOT.COPPER(F2,"ozt",Prices!B5),2)', error: false },
  "Prices!A5": "Copper allowance",
  "Prices!B5": 0.13,
  "Lots!A3": "L-105",
  "Lots!E3": 925,
  "Lots!F3": { value: "#VALUE!", formula: '=LOT.FINEWEIGHT(D3,"g",E3)', error: true },
  "Lots!F4": { value: "#VALUE!", formula: '=LOT.FINEWEIGHT(D2,"oz",E2)', error: true },
  "Lots!A6": { value: "Bars", formula: '=LOT.BARS(250,"ozt",100,"ozt")', error: false },
  "Lots!B6": 2,
  "Lots!A7": "Remainder",
  "Lots!B7": 50,
  D4: { value: "#DIV/0!", formula: "=1/0", error: true, message: "Cannot divide by zero" },
});
let tell: ((colours: HostColours) => void) | undefined;
const noFiles: PaneFiles = {
  current: () => Promise.reject(new Error("This workbook is in memory alone")),
  handOver: () => Promise.reject(new Error("Nobody takes files here")),
};
const host: PaneHost = {
  files: noFiles,
  referencePage: "reference.html",
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
