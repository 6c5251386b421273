/** Runs in the browser: the plan of an invented lot, beside what the address says of the shop; and a drawing as a PNG. */
import type { Shop } from "../../src/lots/shop";
import { userNotation } from "../../src/pane/notation";
import { sheetColours } from "../../src/pane/picture/colours";
import { drawingText } from "../../src/pane/picture/drawing";
import { pngOf } from "../../src/pane/picture/png";
import { svg } from "../../src/pane/picture/svg";
import { type PlanView, planView } from "../../src/pane/set-up-a-lot/plan/plan-view";

const told: Shop = {
  acidStrength: { value: "68%" },
  acidExcess: { value: "5%" },
  pail: { value: 5, unit: "gal" },
  pailFill: { value: "75%" },
  fumeHours: { value: 6 },
  airLimit: { value: 0.2 },
  airSafety: { value: 5 },
  copperAllowance: { value: "13%" },
  copperBar: { value: 5, unit: "lb" },
  copperStub: { value: "15%" },
  dropTarget: { value: 0.05 },
  dropRate: { value: 0.15 },
  settleHours: { value: 24 },
  saltExcess: { value: "50%" },
  retained: { value: 2, unit: "L" },
  rinse: { value: 8, unit: "L" },
  rinseTarget: { value: 0.01 },
  crucible: { value: 6, unit: "kg" },
  mould: { value: 100, unit: "ozt" },
  cellAmps: { value: 50 },
  cellVolts: { value: 2 },
};

const ask = new URLSearchParams(location.search);
const view = planView(
  { net: { value: 17.5, unit: "lb" }, fineness: ask.has("unreadable") ? "nonsense" : 925, lot: "L-104" },
  ask.has("untold") ? {} : told,
  userNotation(ask.has("comma") ? { decimal: ",", separator: ";" } : { decimal: ".", separator: "," }),
);
const page = document.createElement("div");
page.className = "lw-page";
page.append(view.element);
const pane = document.querySelector("#pane");
pane?.classList.add("lotwright-pane");
pane?.append(page);

/** Two squares, the second in the colour of the sheet's accent, and a text that would spoil careless markup. */
const drawing = { width: 40, height: 20, alt: "Two squares", shapes: [svg("rect", { x: 20, y: 0, width: 20, height: 20, fill: sheetColours.accent }), svg("text", { x: 2, y: 12, fill: "none" }, 'A < B & "C"\u0001\ud800')] };

const shown = { view, png: async (): Promise<number[]> => [...(await pngOf(drawingText(drawing), drawing.width, drawing.height))] };
declare global {
  interface Window {
    plan: { readonly view: PlanView; png(): Promise<number[]> };
  }
}
window.plan = shown;
