import { describe, expect, it } from "vitest";
import { proposalsOn } from "../../src/lots/find";
import { listedLots } from "../../src/lots/listed-lot";
import type { Shop } from "../../src/lots/shop";
import { userNotation } from "../../src/pane/notation";
import { prefills } from "../../src/pane/quote-a-client/prefill";
import { type Column, sheetOf } from "../lots/readings";

const notation = userNotation({ decimal: ".", separator: "," });

function known(columns: readonly Column[], shop: Shop = {}): (key: string) => string {
  const sheet = sheetOf(columns);
  const [place] = proposalsOn(sheet);
  if (!place) throw new Error("The list was not found");
  const [lot] = listedLots(sheet, place);
  const found = prefills({ shop, lots: [], noLots: null, quotes: [], today: { year: 2026, month: 3, day: 2 } }, lot ?? null, notation);
  return (key) => [...found].filter(([own]) => own === key).map(([, { text, unit }]) => (unit === undefined ? text : `${text} ${unit}`))[0] ?? "";
}

describe("what a lot fills in", () => {
  it("means the same as in its column, whatever scale that is on", () => {
    const of = known([["Lot", "A-1", "A-2"], ["Gross lb", 10, 8], ["Tare lb", 1.5, 1], ["Purity %", 92.5, 90], ["Payable share", 0.97, 0.98], ["Price per kg", 800, 810]]);
    expect([of("weight"), of("likely"), of("payable"), of("price")]).toEqual(["8.5 lb", "92.5%", "97%", "800 kg"]);
  });
  it("goes before what the shop says, and the shop fills the rest", () => {
    const of = known([["Lot", "A-1", "A-2"], ["Net g", 100, 200], ["Fineness", 925, 900], ["Price per ozt", 24, 25]], { price: { sheet: "Prices", cell: "B4", unit: "ozt" }, payable: { value: "98%" }, deduction: { value: 5 }, quoteDays: { value: 10 } });
    expect([of("price"), of("payable"), of("deduction"), of("days"), of("low")]).toEqual(["24 ozt", "98%", "5‰", "10", ""]);
  });
});
