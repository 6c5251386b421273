import { describe, expect, it } from "vitest";
import { dayNumber } from "../../src/lots/calendar";
import { type LotFacts, type Surroundings, plausibility } from "../../src/lots/plausible";

const around: Surroundings = { today: { year: 2026, month: 4, day: 3 }, lots: ["2026-013", 1041], prices: [24, 24.5, 23.8] };
const g = (value: number) => ({ value, unit: "g" });
const said = (facts: LotFacts): string[] => plausibility(facts, around).map(({ sentence }) => sentence);

describe("remarks on what looks odd", () => {
  it("say nothing about an ordinary lot", () => {
    expect(said({ lot: "2026-014", date: dayNumber(around.today), gross: { value: 18.6, unit: "lb" }, tare: { value: 1.1, unit: "lb" }, net: { value: 17.5, unit: "lb" }, fineness: 0.925, stamp: 0.925, fineWeight: { value: 236.067, unit: "ozt" }, outturn: { value: 233.4, unit: "ozt" }, price: { value: 24.5, unit: "ozt" }, payable: 0.95, payout: 5400, pails: { litres: 14, count: 1, holds: 18.9, fill: 0.8 } })).toEqual([]);
  });

  it.each<[LotFacts, string]>([
    [{ gross: g(100), net: g(120) }, "Net (120 g) is above gross (100 g): are they swapped?"],
    [{ gross: { value: 1, unit: "lb" }, net: { value: 15, unit: "ozt" } }, "Net (15 ozt) is above gross (1 lb): are they swapped?"],
    [{ gross: g(100), tare: g(120) }, "Tare (120 g) is above gross (100 g): are they swapped, or in another unit?"],
    [{ gross: g(100), tare: g(10), net: g(80) }, "Gross less tare is 90 g, and net says 80 g"],
    [{ net: g(100), fineWeight: { value: 4, unit: "ozt" } }, "Fine weight (4 ozt) is above the weight of the goods (100 g): look at the units"],
    [{ fineness: 0.8, stamp: 0.925 }, "Fineness 800 ‰ is far from the stamp (925 ‰): solder, filled handles or plate bring it down; melt and assay decide"],
    [{ fineness: 0.04 }, "Fineness 40 ‰ is low for silver goods: plate, or a number on another scale?"],
    [{ price: { value: 350, unit: "ozt" } }, "Price 350 per ozt is 14.5833 times the usual 24 per ozt: it looks like a price per lb"],
    [{ price: { value: 780, unit: "ozt" } }, "Price 780 per ozt is 32.5 times the usual 24 per ozt: it looks like a price per kg"],
    [{ price: { value: 0.78, unit: "ozt" } }, "Price 0.78 per ozt is 0.0325 times the usual 24 per ozt: it looks like a price per g"],
    [{ fineWeight: { value: 10, unit: "ozt" }, price: { value: 24, unit: "ozt" }, payout: 250 }, "Payout 250.00 is above the metal's value, 240.00: look at fine weight, price and terms"],
    [{ payout: -12 }, "Payout -12.00 is below zero: the client would owe it; the charges exceed the metal"],
    [{ pails: { litres: 20, count: 1, holds: 20, fill: 0.8 } }, "20 L is over the fill of 1 pail (16 L at 80 %): take more pails, since dissolving foams and rises"],
    [{ lot: "2026-013" }, "Lot number 2026-013 is in the list already: two lots under one number cannot be told apart"],
    [{ lot: "1041" }, "Lot number 1041 is in the list already: two lots under one number cannot be told apart"],
    [{ date: dayNumber({ year: 2026, month: 4, day: 4 }) }, "The date 2026-04-04 lies in the future"],
    [{ outturn: { value: 12, unit: "ozt" }, fineWeight: { value: 10, unit: "ozt" } }, "Outturn (12 ozt) is above the fine weight that was charged (10 ozt): a higher fineness, another lot's metal, or a unit"],
  ])("%j: %s", (facts, sentence) => {
    expect(said(facts)).toEqual([sentence]);
  });
});
