import { Workbook } from "@cj-tech-master/excelts";
import { readArea } from "../../src/workbook/xlsx/address";
import { describe, expect, it } from "vitest";
import checks from "../../shared/checks/balance.json";
import { find } from "../../src/catalogue/catalogue";
import { massUnits } from "../../src/core/measure/mass";
import type { FieldId } from "../../src/lots/fields";
import type { ListedLot } from "../../src/lots/listed-lot";
import { refusals } from "../../src/month/close-month";
import { figuresOf } from "../../src/month/figures";
import { measuredIn } from "../../src/month/measured";
import { lotInProcess, monthBasis } from "../../src/month/month-basis";
import type { MonthInput, StockLine } from "../../src/month/month-input";
import { monthLots, monthsOf } from "../../src/month/month-lots";
import { monthText } from "../../src/month/month-of";
import { ROWS } from "../../src/month/month-places";
import { openingOf } from "../../src/month/opening";
import { READINGS } from "../../src/month/readings";
import { stockTerms } from "../../src/month/stock-terms";
import type { FilePort } from "../../src/workbook/file-port";
import { type UglyBook, uglyBooks } from "../lots/ugly/books";
import { bytesOf, listOn, march } from "../lots/ugly/writing";
import { APRIL, type Closed, GRAMS, MARCH, SHOP, close, fineOf, liquor, lotsIn, metal, placed, twoMonths } from "./books";

const STOCK: readonly StockLine[] = [metal("Crystal", 5000, "g", "999.9‰"), metal("Stubs", 2, "kg", 0.02, 0.2), liquor("Spent liquor", 120, 0.3, 0.1)];
const OPENING = { fine: 100, uncertainty: 0.3 };
const input = (more: Partial<MonthInput> = {}): MonthInput => ({ ...SHOP, month: MARCH, opening: OPENING, counted: STOCK, shipped: [metal("Bars", 900, "ozt", 999)], ...more });

const book = async (): Promise<FilePort> => placed(await twoMonths());

/** The block that LOT.BALANCE spills for the figures that stand in the sheet. */
async function balanceOf(closed: Closed, bias: number): Promise<readonly (readonly unknown[])[]> {
  const [o, r, s, c, uo, ur, us, uc] = await Promise.all(["B6", "B7", "B8", "B9", "C6", "C7", "C8", "C9"].map(closed.number));
  return find("BALANCE")?.call(o, r, s, c, uo, ur, us, uc, bias).value() as readonly (readonly unknown[])[];
}

describe("the sheet of a month", () => {
  it("shows what LOT.BALANCE gives for its own figures, line by line", async () => {
    const closed = await close(await book(), input({ bias: 0.0004 }));
    const block = await balanceOf(closed, 0.0004);
    expect(block.map(([label]) => label)).toEqual(["Opening", "Received", "Shipped", "Closing", "Unaccounted", "Expanded uncertainty", "Share of throughput", "Verdict"]);
    for (const [i, [label, value]] of block.entries()) expect([await closed.value(`A${ROWS.opening + i}`), await closed.value(`B${ROWS.opening + i}`)]).toEqual([label, value]);
  });

  it("adds up the lots that came in that month, and their uncertainties in quadrature", async () => {
    const port = await book();
    const closed = await close(port, input());
    const { received } = monthLots(closed.place, MARCH);
    expect(received).toHaveLength(12);
    expect(await closed.number("B7")).toBeCloseTo(fineOf(received), 9);
    const sum = received.reduce((all, lot) => {
      const [net, fineness] = [Number(lot.value("net")), Number(lot.value("fineness")) / 1000];
      return all + (0.5 * fineness) ** 2 + (net * 0.001) ** 2;
    }, 0);
    expect(await closed.number("C7")).toBeCloseTo(Math.sqrt(sum) / GRAMS, 9);
  });

  it("counts stock by its weight and fineness, and liquor by its test", async () => {
    const closed = await close(await book(), input());
    expect(await closed.number("B9")).toBeCloseTo((5000 * 0.9999 + 2000 * 0.02 + 120 * 0.3) / GRAMS, 9);
    const parts = [Math.hypot(0.5 * 0.9999, 5000 * 0.001), 2000 * 0.02 * 0.2, 120 * 0.3 * 0.1];
    expect(await closed.number("C9")).toBeCloseTo(Math.hypot(...parts) / GRAMS, 9);
  });

  it("counts a lot that still lies as it came with the weight that the list has", async () => {
    const closed = await close(await book(), input({ counted: [{ kind: "lot", lot: "26-012" }] }));
    const lot = closed.basis.inProcess.find(({ lot: one }) => one.value("lot") === "26-012")?.lot;
    expect(await closed.number("B9")).toBeCloseTo(fineOf(lot ? [lot] : []), 9);
  });

  it("shows each client's lots, recovery and payout, and they add up to the month's", async () => {
    const port = await book();
    const closed = await close(port, input());
    const rows = await port.read({ sheet: closed.name, range: "A1:J80" });
    const at = rows.findIndex(([first]) => first?.value === "Client") + 1;
    const clients = rows.slice(at, rows.findIndex(([first], i) => i >= at && (first?.value ?? null) === null)).map((row) => row.map(({ value }) => value));
    const { received } = monthLots(closed.place, MARCH);
    expect(clients.map(([client]) => client)).toEqual([...new Set(received.map((lot) => lot.value("client")))].sort());
    for (const [client, fineIn, , out, recovery, lots, payout] of clients) {
      const own = received.filter((lot) => lot.value("client") === client);
      const finished = own.filter((lot) => typeof lot.value("outturn") === "number");
      const sum = (some: readonly ListedLot[], field: FieldId): number => some.reduce((all, lot) => all + Number(lot.value(field) ?? 0), 0);
      expect(lots).toBe(own.length);
      expect(Number(fineIn)).toBeCloseTo(fineOf(own), 9);
      expect(Number(out)).toBeCloseTo(sum(finished, "outturn"), 9);
      expect(Number(recovery)).toBeCloseTo(sum(finished, "outturn") / fineOf(finished), 9);
      expect(Number(payout)).toBeCloseTo(sum(own, "payout"), 9);
    }
    expect(clients.reduce((all, row) => all + Number(row[1]), 0)).toBeCloseTo(await closed.number("B7"), 9);
  });

  it("lists the lots still in process, also those of the month before", async () => {
    const port = await book();
    await close(port, input());
    const april = await close(port, input({ month: APRIL, opening: null }));
    expect(april.basis.inProcess.map(({ lot }) => lot.value("lot"))).toEqual(["26-012", "26-024"]);
    const rows = await port.read({ sheet: april.name, range: "A1:E80" });
    const at = rows.findIndex(([first]) => first?.value === "Lots still in process") + 3;
    expect(rows.slice(at, at + 2).map((row) => row.map(({ value }) => value)[4])).toEqual([35, 4]);
  });

  it("takes a lot's new outturn along from the list without being made again", async () => {
    const port = await book();
    const closed = await close(port, input());
    const lot = closed.basis.received.at(-1)?.lot;
    const before = await closed.number("B16");
    await port.write([{ sheet: "Lots", cell: lot?.cell("outturn")?.address ?? "", content: 1 }]);
    expect(await closed.number("B16")).toBeLessThan(before);
  });

  it("says so when the list was sorted and other lots stand in its cells", async () => {
    const port = await book();
    const closed = await close(port, input());
    expect(await closed.value("D7")).toBe("12 lots of sheet Lots, below");
    await port.write([{ sheet: "Lots", cell: closed.basis.received[0]?.lot.cell("date")?.address ?? "", content: march(40) }]);
    expect(await closed.value("D7")).toMatch(/^The list was sorted or changed/);
  });

  it("computes the same as the pane shows before it is written", async () => {
    const port = await book();
    const { sheets, place } = await lotsIn(port);
    const of = input({ bias: 0.0003, weighInBias: 0.002, counted: [...STOCK, { kind: "lot", lot: "26-012" }] });
    const basis = await monthBasis(place, MARCH, of);
    const opening = openingOf(of, sheets);
    if (typeof opening === "string") throw new Error(opening);
    const terms = (lines: readonly StockLine[]) => lines.map((line) => stockTerms(line, 1, measuredIn(of), (number) => lotInProcess(basis, number))).filter((one) => typeof one !== "string");
    const figures = figuresOf({ opening, basis, counted: terms(of.counted), shipped: terms(of.shipped), measurement: of });
    const closed = await close(port, of);
    expect(figures.unaccounted).toBeCloseTo(await closed.number("B10"), 9);
    expect(figures.expanded).toBeCloseTo(await closed.number("B11"), 9);
    expect(figures.share).toBeCloseTo(await closed.number("B12"), 9);
    expect(figures.verdict).toBe(await closed.value("B13"));
  });
});

describe("a lot that came in this month and still lies as it came", () => {
  it("adds nothing to the uncertainty of the gap: its one weighing is in received and in closing", async () => {
    const crystal = metal("Crystal", 5000, "g", 1);
    const without = await close(await book(), input({ counted: [crystal] }));
    const closed = await close(await book(), input({ counted: [crystal, { kind: "lot", lot: "26-012" }] }));
    const row = closed.change.cells.find(({ content }) => content === "Lot 26-012, as it came")?.cell.slice(1) ?? "";
    const u = await closed.number(`C${row}`);
    expect(u).toBeGreaterThan(0.01);
    expect(await closed.number("C9")).toBeCloseTo(Math.hypot(await without.number("C9"), u), 12);
    const halves = [await without.number("B11"), await closed.number("B11")].map((expanded) => (expanded / 2) ** 2);
    expect((halves[0] ?? 0) - (halves[1] ?? 0)).toBeCloseTo(u ** 2, 12);
  });

  it("has no part in what the bias of either scale can explain", async () => {
    const counted = [metal("Crystal", 5000, "g", 1), { kind: "lot", lot: "26-012" } as const];
    const closed = await close(await book(), input({ counted, bias: 0.001, weighInBias: 0.003 }));
    const row = closed.change.cells.find(({ content }) => content === "Lot 26-012, as it came")?.cell.slice(1) ?? "";
    const [o, r, s, c, lot] = await Promise.all(["B6", "B7", "B8", "B9", `B${row}`].map(closed.number));
    const [uo, ur, us, uc, u] = await Promise.all(["C6", "C7", "C8", "C9", `C${row}`].map(closed.number));
    const [O, R, S, C, L, UO, UR, US, UC, U] = [o, r, s, c, lot, uo, ur, us, uc, u].map(Number) as [number, number, number, number, number, number, number, number, number, number];
    const whole = UO ** 2 + UR ** 2 + US ** 2 + UC ** 2 - 2 * U ** 2 + (0.003 * (R - L)) ** 2 + (0.001 * (O - S - C + L)) ** 2;
    expect(await closed.number("B11")).toBeCloseTo(2 * Math.sqrt(whole), 9);
  });
});

describe("the month after", () => {
  it("opens with the closing of the month before, figure and uncertainty", async () => {
    const port = await book();
    const first = await close(port, input());
    const second = await close(port, input({ month: APRIL, opening: null }));
    expect([await second.number("B6"), await second.number("C6")]).toEqual([await first.number("B9"), await first.number("C9")]);
    expect(await second.value("D6")).toBe("the closing of sheet Month 2026-03");
    await port.write([{ sheet: first.name, cell: first.change.cells.find(({ content }) => content === 5000)?.cell ?? "", content: 6000 }]);
    expect(await second.number("B6")).toBe(await first.number("B9"));
    expect(await first.number("B9")).toBeCloseTo((6000 * 0.9999 + 2000 * 0.02 + 120 * 0.3) / GRAMS, 9);
  });

  it("lists the months so far, with the unaccounted metal running", async () => {
    const port = await book();
    const first = await close(port, input());
    const second = await close(port, input({ month: APRIL, opening: null }));
    const area = readArea(second.change.charts?.[0]?.categories ?? "");
    const rows = { first: area?.top ?? 0, last: area?.bottom ?? 0 };
    expect(rows.last - rows.first).toBe(1);
    expect(await second.value(`A${rows.first}`)).toBe("2026-03");
    expect(await second.number(`G${rows.last}`)).toBeCloseTo((await first.number("B10")) + (await second.number("B10")), 9);
    expect(await second.number(`B${rows.first}`)).toBe(Math.max(await first.number("B7"), await first.number("B8")));
    expect((await second.number(`E${rows.last}`)) - (await second.number(`D${rows.last}`))).toBeCloseTo(2 * (await second.number("B17")), 12);
  });
});

describe("a gap", () => {
  /** What must be counted so that nothing is unaccounted for, in grams of fine metal. */
  async function exact(port: FilePort): Promise<number> {
    const { place } = await lotsIn(port);
    return (OPENING.fine + fineOf(monthLots(place, MARCH).received) - 899.1) * GRAMS;
  }
  const counting = async (off: number, more: Partial<MonthInput> = {}): Promise<Closed> => {
    const port = await book();
    return close(port, input({ counted: [metal("Crystal", (await exact(port)) + off * GRAMS, "g", 1)], ...more }));
  };

  it("that weighing and assay explain is within measurement", async () => {
    const closed = await counting(-0.5);
    expect(await closed.number("B10")).toBeCloseTo(0.5, 6);
    expect(await closed.value("B13")).toBe("within measurement");
  });

  it.each<["metal missing" | "metal over", number]>([["metal missing", -12], ["metal over", 12]])("that they do not explain is %s, with what to look at first", async (verdict, off) => {
    const closed = await counting(off);
    expect(await closed.value("B13")).toBe(verdict);
    expect([await closed.value("B14"), await closed.value("B15")]).toEqual([READINGS[verdict].meaning, READINGS[verdict].lookFirst]);
  });

  it("that a scale at weigh-in makes looks like a loss until its bias is told", async () => {
    const port = await book();
    const received = fineOf(monthLots((await lotsIn(port)).place, MARCH).received);
    // The scale at weigh-in shows 0.4 % too much: so much less is there at the end.
    const short = -0.004 * received;
    expect(await (await counting(short)).value("B13")).toBe("metal missing");
    const told = await counting(short, { weighInBias: 0.003 });
    expect(await told.value("B13")).toBe("within measurement");
    expect(await told.number("B11")).toBeGreaterThan(2 * 0.003 * received);
  });

  it("is judged no milder by a bias that one scale has in everything, since it acts on the gap alone", async () => {
    const [without, told] = [await counting(-12), await counting(-12, { bias: 0.003 })];
    expect(await told.value("B13")).toBe("metal missing");
    const [a, b] = [await without.number("B11"), await told.number("B11")];
    expect(b ** 2 - a ** 2).toBeCloseTo((2 * 0.003 * 12) ** 2, 6);
  });

  it("of the published inventory is found again: book less physical", async () => {
    const row = checks.rows.find(({ id }) => id === "K02");
    const { book: books, physical } = row?.inputs as { book: number; physical: number };
    const workbook = new Workbook();
    const sheet = workbook.addWorksheet("Lots");
    listOn(sheet, { headings: ["Lot", "Date", "Client", "Net (kg)", "Fineness"], headingRow: 1, rows: [["L-1", march(2), "C-1", books - 20, 1], ["L-2", march(9), "C-2", 10, 1]], formats: { B: "yyyy-mm-dd" } });
    const inOunces = 1000 / GRAMS;
    const closed = await close(await placed(await bytesOf(workbook)), input({ opening: { fine: 15 * inOunces, uncertainty: 0 }, shipped: [metal("Bars", 5, "kg", 1)], counted: [metal("Crystal", physical, "kg", 1)] }));
    expect((await closed.number("B10")) / inOunces).toBeCloseTo(Number(row?.expected), 9);
  });
});

describe("a list as it is met", () => {
  /** The fine weight of a lot by a plain loop over what the list holds, in troy ounces. */
  function plainly(lot: ListedLot): number {
    const grams = ({ value, unit }: { value: number; unit: string }): number => value * (massUnits.lookUp(unit)?.size.toNumber() ?? NaN);
    const own = lot.weight("fineWeight");
    if (own) return grams(own) / GRAMS;
    const [net, gross, tare] = [lot.weight("net"), lot.weight("gross"), lot.weight("tare")];
    const written = lot.value("fineness");
    const number = Number(String(written).replace("%", ""));
    return ((net ? grams(net) : grams(gross ?? { value: NaN, unit: "g" }) - (tare ? grams(tare) : 0)) * (number > 100 ? number / 1000 : number > 1 ? number / 100 : number)) / GRAMS;
  }

  it.each<UglyBook>(["pounds and short headings", "two-row headings", "French Canada", "United Kingdom", "total below", "hidden and filtered", "table", "five thousand"])("%s: every lot of the month is in what was received, in troy ounces", async (name) => {
    const port = await placed(await uglyBooks[name]());
    const { place } = await lotsIn(port);
    const months = monthsOf(place);
    const month = months.at(-1) ?? MARCH;
    const closed = await close(port, input({ month, counted: [] }));
    expect(closed.basis.received.length, closed.basis.remarks.join("; ")).toBeGreaterThan(0);
    const lots = monthLots(place, month).received.filter(({ row }) => closed.basis.received.some(({ lot }) => lot.row === row));
    expect(await closed.number("B7")).toBeCloseTo(lots.reduce((sum, lot) => sum + plainly(lot), 0), 6);
    expect(await closed.value("B13")).toMatch(/metal|measurement/);
  });

  it("names the rows that have no date, no weight, no fineness or no unit, and counts the others", async () => {
    const workbook = new Workbook();
    const sheet = workbook.addWorksheet("Lots");
    listOn(sheet, {
      headings: ["Lot", "Date", "Client", "Net", "Unit", "Fineness", "Outturn (ozt)"],
      headingRow: 1,
      rows: [["L-1", march(2), "C-1", 1000, "g", 925, null], ["L-2", null, "C-1", 500, "g", 925, null], ["L-3", march(4), "C-2", null, "g", 925, null], ["L-4", march(5), "C-2", 800, "oz", 925, null], ["L-5", march(6), "C-3", 700, "g", null, null], ["L-6", march(7), "C-3", 700, "g", 92.5, null], ["L-7", march(8), "C-3", 700, "g", "925", null]],
      formats: { B: "yyyy-mm-dd" },
    });
    const port = await placed(await bytesOf(workbook));
    const closed = await close(port, input());
    const about = (row: number): string => closed.basis.remarks.find((remark) => remark.startsWith(`Row ${row} `)) ?? "";
    expect(about(3)).toMatch(/no date that can be read/);
    expect(about(4)).toMatch(/has no weight/);
    expect(about(5)).toMatch(/unit is not known/);
    expect(about(6)).toMatch(/no fineness and no fine weight/);
    expect(about(7)).toMatch(/could be %, karat or ‰/);
    expect(closed.basis.received.map(({ lot }) => lot.value("lot"))).toEqual(["L-1", "L-7"]);
    expect(await closed.value("A3")).toMatch(/^Not counted.*rows 3, 4, 5, 6, 7 of the list$/);
  });
});

describe("what cannot be closed is refused in a sentence", () => {
  const refused = async (port: FilePort, of: MonthInput): Promise<readonly string[]> => {
    const found = await lotsIn(port);
    return refusals(found, of, await monthBasis(found.place, of.month, of));
  };

  it("a month that has its sheet already", async () => {
    const port = await book();
    await close(port, input());
    expect(await refused(port, input())).toEqual([expect.stringMatching(/^2026-03 is closed already, on sheet ‘Month 2026-03’: change what was entered there.*or delete that sheet/)]);
  });

  it("a month without an opening and without a month before", async () => {
    expect(await refused(await book(), input({ opening: null }))).toEqual([expect.stringMatching(/no sheet ‘Month 2026-02’.*enter with how much/)]);
  });

  it("stock that cannot be what it says", async () => {
    expect(await refused(await book(), input({ counted: [metal("Crystal", 10, "oz", 999), metal("Bars", 10, "g", 92.5), { kind: "lot", lot: "26-001" }, { kind: "lot", lot: "26-012" }, { kind: "lot", lot: "26-012" }] }))).toEqual([
      expect.stringMatching(/^Crystal: .*troy or avoirdupois/),
      expect.stringMatching(/^Bars: .*could be %, karat or ‰/),
      expect.stringMatching(/^Lot 26-001, as it came: Lot 26-001 is not among the lots still in process/),
      "Lot 26-012 is counted twice: take one of its lines out",
    ]);
  });

  it("a sheet of that name that is somebody else's", async () => {
    const port = await book();
    await port.write([{ newSheet: "Month 2026-02", cells: [{ cell: "A1", content: "my notes" }] }]);
    expect(await refused(port, input({ opening: null }))).toEqual([expect.stringMatching(/no sheet ‘Month 2026-02’ to read the opening from/)]);
  });

  it("and the months of a list are those of its dates", async () => {
    expect(monthsOf((await lotsIn(await book())).place).map(monthText)).toEqual(["2026-03", "2026-04"]);
  });
});
