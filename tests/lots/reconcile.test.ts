import { describe, expect, it } from "vitest";
import { reconciledSentence } from "../../src/lots/reconcile";
import { agrees, decimals } from "../../src/lots/reconcile-agreement";
import { GRAMS, lotsIn, placed } from "../month/books";
import { HEADINGS, bookOf, goodRows, look, lookAt, seeded, shortly, withOurs } from "./reconcile-books";
import { type UglyBook, uglyBooks } from "./ugly/books";
import { type Content, formula, march } from "./ugly/writing";

describe("a tidy list", () => {
  it("contradicts itself nowhere, and it is told what was looked at", async () => {
    const found = await look(await bookOf(goodRows(38)));
    expect(shortly(found)).toEqual([]);
    expect(found.remarks).toEqual([]);
    expect(reconciledSentence(found)).toBe("Nothing contradicts itself in 38 lots");
    expect(found.looked.filter(({ count }) => count > 0).map(({ kind, count }) => `${kind} ${count}`)).toEqual(["number 38", "date 38", "unit 38", "weight 38", "outturn 31", "recovery 31", "payout 38", "overtyped 3"]);
    expect(found.looked.at(-1)).toEqual({ kind: "stale", count: 0, without: "no cell of the list holds a formula of Lotwright that can be computed here" });
  });

  it("that is empty has nothing to contradict", async () => {
    const book = await lotsIn(await placed(await bookOf(goodRows(3))));
    const none = { ...book, place: { ...book.place, list: { ...book.place.list, rows: [] } } };
    expect(reconciledSentence(await lookAt(none))).toBe("There is no lot in the list yet");
  });
});

describe("a contradiction that was seeded into it is found where it is", () => {
  it.each<[string, Record<string, Content>, string, RegExp]>([
    ["an outturn above the charge", { O3: 999, P3: formula("O3/H3", 999 / ((865.5 - 11) * 0.9 / 31.1034768)) }, "outturn O3", /^Outturn \(999 ozt\) is above the fine weight that was charged \(\d+\.\d+ ozt\)/],
    ["a typed net that is not gross less tare", { F4: 1200 }, "weight F4", /^Gross less tare is 1242\.5 g, and net says 1200 g$/],
    ["a net above the gross", { F4: 1300 }, "weight F4", /^Net \(1300 g\) is above gross/],
    ["a tare above the gross", { E4: 1400 }, "weight E4", /^Tare \(1400 g\) is above gross \(1254\.5 g\)/],
    ["a weight below zero", { O3: -4 }, "outturn O3", /^-4 ozt is below zero$/],
    ["a fine weight that does not follow", { H5: 40 }, "weight H5", /hold \d+\.\d+ ozt, and fine weight says 40 ozt$/],
    ["a date in the future", { B21: march(200) }, "date B21", /^The date 2026-09-16 lies in the future$/],
    ["a date out of order", { B9: march(0) }, "date B9", /^The date 2026-02-28 is out of order: it stands beside lot 26-007 \(2026-03-28\) and lot 26-009 \(2026-04-06\)/],
    ["a date that is a text", { B9: "31/2/2026" }, "date B9", /^‘31\/2\/2026’ is a text and no date/],
    ["a number that is no date", { B9: 20260314 }, "date B9", /^20260314 is no date/],
    ["a payment before the lot came in", { R4: march(1) }, "date R4", /^‘Paid on’ \(2026-03-01\) lies before ‘Date’ \(2026-03-10\); in the other 15 lots it does not$/],
    ["a weight as a text with its unit", { D6: "4 lb" }, "unit D6", /^‘4 lb’ is a text, .*; the column is in g: write 1814\.3695$/],
    ["a text in the column's own unit", { E6: "14 g" }, "unit E6", /: write 14 alone, since ‘Tare \(g\)’ says g$/],
    ["money as a text", { M6: "$15.00" }, "unit M6", /^‘\$15\.00’ is a text.*: write the number alone$/],
    ["a fineness on another scale", { G6: 92.5 }, "unit G6", /^92\.5 stands in a column of parts per thousand: a percentage would be 925$/],
    ["a share as a percentage", { J6: 96 }, "unit J6", /^96 stands in a column of shares from 0 to 1: a percentage would be 0\.96$/],
    ["a payout that does not follow from its terms", { N6: 1400 }, "payout N6", /^The terms of its row give \d+\.\d\d, and payout says 1400\.00, \d+\.\d\d too (?:much|little)$/],
    ["a recovery that was typed and does not follow", { P5: 0.9 }, "recovery P5", /^Outturn over fine weight is 98\.4\d* %, and recovery says 90 %$/],
    ["a formula that was typed over", { F7: 1996.5 }, "overtyped F7", /^1996\.5 was typed where 19 cells of this column hold a formula/],
    ["a lot number twice", { A9: "26-003" }, "number A9", /^Lot number 26-003 stands in A4 too: two lots under one number/],
    ["a lot number twice in other letters and with a blank", { A3: "x-1", A9: " X-1 " }, "number A9", /stands in A3 too/],
  ])("%s", async (_, cells, where, sentence) => {
    const { contradictions } = await look(await seeded(cells));
    const found = contradictions.filter(({ kind, cell }) => `${kind} ${cell}` === where);
    expect(found.map((one) => one.sentence)).toEqual([expect.stringMatching(sentence)]);
    // Nothing is said of a lot whose row was left alone.
    const touched = new Set(Object.keys(cells).map((cell) => Number(cell.replace(/\D/g, ""))));
    expect(contradictions.filter(({ row }) => !touched.has(row))).toEqual([]);
  });

  it("a payout by a single cent", async () => {
    const [, good = 0] = goodRows(20).map((row) => Number(row[13]));
    expect(shortly(await look(await seeded({ N3: Math.round(good * 100 + 1) / 100 })))).toEqual(["payout N3"]);
    expect(shortly(await look(await seeded({ N3: good + 0.004 })))).toEqual([]);
  });

  it("a payout that does not follow where the shop makes up for terms that the list has not", async () => {
    const heads = ["Lot", "Date", "Client", "Net (g)", "Fineness (‰)", "Price (per ozt)", "Payout"];
    const shop = { payable: { value: "96%" }, refiningCharge: { value: 0.5, unit: "ozt" }, lotCharges: { value: 15 } } as const;
    const rows = goodRows(12).map((_, i): Content[] => {
      const net = 500 + i * 100;
      return [`S-${i + 1}`, march(1 + i), "C-01", net, 925, 25, Math.round((((net * 0.925) / GRAMS) * 0.96 * 24.5 - 15) * 100) / 100 + (i === 3 ? 0.02 : 0)];
    });
    const found = await look(await bookOf(rows, heads), { shop });
    expect(found.contradictions.map(({ cell, sentence }) => `${cell} ${sentence}`)).toEqual([expect.stringMatching(/^G5 The terms of its row, with the shop’s payable share, refining charge, lot charges, give \d+\.\d\d, and payout says \d+\.\d\d, 0\.02 too much$/)]);
    const without = await look(await bookOf(rows, heads));
    expect(without.contradictions).toEqual([]);
    expect(without.remarks).toEqual([expect.stringMatching(/^The payouts of 12 of 12 lots do not follow/)]);
  });

  it("a unit that differs from the others', none, or one that could be two", async () => {
    const headings = ["Lot", "Date", "Client", "Gross", "Tare", "Net", "Unit", "Fineness (‰)"];
    const rows = Array.from({ length: 20 }, (_, i): Content[] => [`U-${i + 1}`, march(1 + i), "C-01", 100 + i, 1, 99 + i, i === 4 ? "kg" : i === 7 ? "oz" : i === 9 ? "" : i === 11 ? "stones" : "g", 925]);
    const { contradictions } = await look(await bookOf(rows, headings));
    expect(contradictions.map(({ cell, sentence }) => `${cell} ${sentence}`)).toEqual([
      "G6 This lot is in kg, as no other is; 16 lots are in g: look whether its weights are",
      "G9 ‘oz’ can be troy or avoirdupois, and they differ by 9.7 %: say ozt (troy) or ozav (avoirdupois)",
      "G11 There are weights in this row and no unit",
      "G13 ‘stones’ is no unit of weight: write one such as g, kg, lb or ozt",
    ]);
  });

  it("a stored value that differs from a fresh one, behind our own condition too", async () => {
    const found = await lookAt(await withOurs({ H4: 30, P5: 0.5 }));
    expect(found.contradictions.filter(({ kind }) => kind === "stale").map(({ cell, sentence }) => `${cell} ${sentence}`)).toEqual([
      expect.stringMatching(/^H4 The cell shows 30, but its numbers now give 31\.95\d*: have the workbook computed again/),
      expect.stringMatching(/^P4 The cell shows 0\.98\d*, but its numbers now give 1\.04\d*: /),
      expect.stringMatching(/^P5 The cell shows 0\.5, but its numbers now give 0\.98\d*: /),
    ]);
    expect(found.looked.at(-1)).toEqual({ kind: "stale", count: 36, without: null });
    expect(shortly(await lookAt(await withOurs({})))).toEqual([]);
  });
});

describe("where a whole column goes another way, no lot is blamed", () => {
  it("payouts that most rows reckon otherwise are one remark", async () => {
    const rows = goodRows(12).map((row) => row.map((content, i) => (i === 13 ? Math.round(Number(content) * 97) / 100 : content)));
    const found = await look(await bookOf(rows));
    expect(shortly(found)).toEqual([]);
    expect(found.remarks).toEqual([expect.stringMatching(/^The payouts of 12 of 12 lots do not follow from their columns, so that no one lot can be blamed: .*In N2: The terms of its row give/)]);
  });

  it("a list with several rows for each lot may repeat its numbers", async () => {
    const rows = goodRows(12).map((row, i) => [`26-${Math.floor(i / 3)}`, ...row.slice(1)]);
    const found = await look(await bookOf(rows));
    expect(shortly(found)).toEqual([]);
    expect(found.remarks).toEqual([expect.stringMatching(/^Lot numbers repeat in 8 of 12 lots/)]);
  });

  it("a list in no order of dates is not held to one, and one that goes backwards is as good", async () => {
    const shuffled = goodRows(20).map((row, i) => row.map((content, c) => (c === 1 ? march(1 + ((i * 7) % 20)) : content)));
    expect(shortly(await look(await bookOf(shuffled.map((row) => row.slice(0, 16)), HEADINGS.slice(0, 16))))).toEqual([]);
    const backwards = goodRows(20).map((row, i) => row.map((content, c) => (c === 1 ? march(40 - i) : content)).slice(0, 8));
    expect(shortly(await look(await bookOf(backwards, HEADINGS.slice(0, 8))))).toEqual([]);
  });
});

describe("untidy workbooks", () => {
  const withoutPlace: readonly UglyBook[] = ["no list", "protected"];
  const names = (Object.keys(uglyBooks) as UglyBook[]).filter((name) => !withoutPlace.includes(name));
  it.each(names)("nothing false is said of ‘%s’", async (name) => {
    const found = await look(await uglyBooks[name]());
    expect(found.contradictions).toEqual([]);
    expect(found.lots).toBe(found.of);
  });
});

describe("ten thousand lots", () => {
  it("are looked at in short steps, and can be stopped with what was found so far", async () => {
    const book = await lotsIn(await placed(await seeded({ N6: 1, N9000: 1 }, 10_000)));
    const began = performance.now();
    const steps: number[] = [];
    let drawn = began;
    const found = await lookAt(book, {
      step: () => {
        steps.push(performance.now() - drawn);
        drawn = performance.now();
        return true;
      },
    });
    expect(shortly(found)).toEqual(["payout N6", "payout N9000"]);
    expect(performance.now() - began).toBeLessThan(20_000);
    expect([...steps].sort((a, b) => a - b)[Math.floor(steps.length * 0.9)]).toBeLessThan(200);
    const stopped = await lookAt(book, { step: (done) => done < 1000 });
    expect(shortly(stopped)).toEqual(["payout N6"]);
    expect([stopped.lots, stopped.of]).toEqual([1000, 10_000]);
    expect(reconciledSentence(stopped)).toBe("1 contradiction in 1 lot of the first 1000 of 10000 lots");
  }, 120_000);
});

describe("digits", () => {
  it("a number agrees when it is the other one rounded to its column's digits", () => {
    expect([decimals(17.5), decimals(1e-7), decimals(1.5e-7), decimals(1e21), decimals(-3.25)]).toEqual([1, 7, 8, 0, 2]);
    expect(agrees(17.5, 17.52, 1)).toBe(true);
    expect(agrees(17.5, 17.56, 1)).toBe(false);
    expect(agrees(18, 17.52, 1)).toBe(false);
    expect(agrees(18, 17.52, 0)).toBe(true);
  });
});
