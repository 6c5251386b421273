import { readFileSync } from "node:fs";
import { strToU8, unzipSync, zipSync } from "fflate";
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { evaluate } from "../../src/engine/evaluate";
import { agreedFineness, settlementFigures } from "../../src/lots/settlement-figures";
import type { StatementInput } from "../../src/lots/settlement";
import { statementSheet } from "../../src/lots/statement-sheet";
import { share } from "../../src/sharing/share";
import { openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";
import { outside } from "../outside";
import { random } from "../random";
import { convertedTo, shownBy } from "../workbook/libreoffice";
import { settling } from "./settlements";

const sample = new Uint8Array(readFileSync(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url)));
const NAME = "Statement S-2026-007";

async function written(input: StatementInput): Promise<{ port: FilePort; cells: Map<string, unknown> }> {
  const port = new FilePort(openXlsx(sample));
  await port.write([statementSheet(input, NAME).sheet]);
  return { port, cells: new Map([...port.file.cells(NAME)].map(({ address, value }) => [address, value])) };
}
/** What stands in B beside a label; of a charge, what it comes to, which stands under its rate. */
function beside(cells: ReadonlyMap<string, unknown>, label: RegExp): number {
  const row = [...cells].findLast(([cell, value]) => cell.startsWith("A") && label.test(String(value)))?.[0].slice(1);
  return Number(cells.get(`B${row}`));
}

const netCell = (cells: ReadonlyMap<string, unknown>): string => `B${[...cells].find(([, value]) => value === "Net weight")?.[0].slice(1)}`;

describe("the statement that a client gets", () => {
  it("says what LOT.AGREEDASSAY, LOT.SETTLEMENT and LOT.RECOVERY say, in a cell each", async () => {
    const { cells } = await written(settling);
    expect(beside(cells, /^Agreed fineness/)).toBe(evaluate('=LOT.AGREEDASSAY(801.5,"80%",3)'));
    const rows = evaluate('=LOT.SETTLEMENT(12.35,"lb",800.75,LOT.PRICE(408.33,"lb","ozt"),0.95,0.55,LOT.PRICE(1.1,"kg","lb"),25,5)') as unknown as (string | number)[][];
    const of = (label: string): unknown => rows.find(([name]) => name === label)?.[1];
    for (const label of ["Fine weight", "Payable fine weight", "Metal value", "Refining charge", "Treatment charge", "Lot charges", "Payout"]) expect([label, beside(cells, new RegExp(`^${label}$`))]).toEqual([label, of(label)]);
    expect(beside(cells, /^Settled less quoted/)).toBe(Math.round((Number(of("Payout")) - 3150.5) * 100) / 100);
    expect(beside(cells, /^Recovery/)).toBeCloseTo(4400 / 31.1034768 / Number(of("Fine weight")), 12);
    expect([...cells.values()].filter((value) => typeof value === "string" && value.startsWith("#"))).toEqual([]);
  });

  it("adds up to the cent, whatever the terms", () => {
    const { decimal: between } = random(20261125);
    for (let i = 0; i < 300; i++) {
      const { lines, payout } = settlementFigures({
        ...settling,
        weight: { value: between(0.5, 40, 3), unit: ["lb", "kg", "ozt", "g"][i % 4] ?? "kg" },
        assays: { ours: between(500, 999, 1) },
        terms: { price: { value: between(15, 40, 4), unit: "ozt" }, payable: between(0.8, 1, 3), refiningCharge: { value: between(0, 2, 3), unit: "ozt" }, treatmentCharge: { value: between(0, 3, 3), unit: "lb" }, lotCharges: between(0, 90, 2), deduction: between(0, 20, 1) },
        found: {},
      });
      const cents = lines.filter(([, , unit]) => unit === "money").map(([label, amount]) => [label, Math.round(amount * 100)] as const);
      const sum = cents.filter(([label]) => label !== "Payout").reduce((total, [, amount]) => total + amount, 0);
      expect(sum).toBe(Math.round(payout * 100));
    }
  });

  it("shows in its cells what LOT.SETTLEMENT gives, to the cent, whatever the terms", async () => {
    const { decimal: between } = random(20261126);
    for (let i = 0; i < 12; i++) {
      const unit = ["lb", "kg", "ozt", "g"][i % 4] ?? "kg";
      const [net, fineness, price, payable, refining, treatment, charges, deduction] = [between(0.5, 40, 3), between(500, 999, 1), between(15, 40, 4), between(0.8, 1, 3), between(0, 2, 3), between(0.1, 3, 3), between(0, 90, 2), between(0, 20, 1)];
      const { cells } = await written({
        ...settling,
        weight: { value: net, unit },
        assays: { ours: fineness },
        terms: { price: { value: price, unit: "ozt" }, payable, refiningCharge: { value: refining, unit: "ozt" }, treatmentCharge: { value: treatment, unit }, lotCharges: charges, deduction },
        found: {},
      });
      const lines = evaluate(`=LOT.SETTLEMENT(${net},"${unit}",${fineness},${price},${payable},${refining},${treatment},${charges},${deduction})`) as unknown as (string | number)[][];
      const money = lines.filter(([, , of]) => of === "money");
      for (const [label, amount] of money.filter(([label]) => label !== "Rounding" && label !== "Payout")) expect([label, beside(cells, new RegExp(`^${label}$`))]).toEqual([label, amount]);
      const shown = ["Metal value", "Refining charge", "Treatment charge", "Lot charges", "Rounding"].map((label) => beside(cells, new RegExp(`^${label}$`))).filter((amount) => !Number.isNaN(amount));
      const payout = beside(cells, /^(Payout|The client owes)$/);
      expect(payout).toBe(money.at(-1)?.[1]);
      expect(shown.reduce((sum, amount) => sum + Math.round(amount * 100), 0)).toBe(Math.round(payout * 100));
    }
  });

  it("brings the odd cent in a line of its own as soon as another assay makes one", async () => {
    const even: StatementInput = { ...settling, assays: { ours: 800 }, found: {} };
    const { port, cells } = await written(even);
    const ours = [...cells].find(([cell, value]) => cell.startsWith("A") && value === "Ours")?.[0].slice(1);
    const seen = new Set<boolean>();
    for (let fineness = 800; fineness < 812; fineness++) {
      await port.write([{ sheet: NAME, cell: `B${ours}`, content: fineness }]);
      const now = new Map([...port.file.cells(NAME)].map(({ address, value }) => [address, value]));
      const lines = ["Metal value", "Refining charge", "Treatment charge", "Lot charges", "Rounding"].map((label) => beside(now, new RegExp(`^${label}$`)));
      const rounding = lines.pop() ?? NaN;
      seen.add(Number.isNaN(rounding));
      expect([...lines, Number.isNaN(rounding) ? 0 : rounding].reduce((sum, amount) => sum + Math.round(amount * 100), 0)).toBe(Math.round(beside(now, /^Payout$/) * 100));
    }
    expect(seen.size, "the line comes and goes").toBe(2);
  });

  it("shows gross and tare where the net weight is their difference, and the net alone where it is not", async () => {
    const scale = { gross: { value: 12.85, unit: "lb" }, tare: { value: 0.5, unit: "lb" } };
    const { port, cells } = await written({ ...settling, scale });
    expect([beside(cells, /^Gross weight/), beside(cells, /^Tare/), beside(cells, /^Net weight/)]).toEqual([12.85, 0.5, 12.35]);
    expect([...port.file.cells(NAME)].find(({ address }) => address === netCell(cells))?.formula).toMatch(/^=ROUND\(B\d+-B\d+,2\)$/);
    expect(beside(cells, /^Payout/)).toBe(settlementFigures(settling).payout);
    const { cells: other } = await written({ ...settling, scale: { ...scale, tare: { value: 0.6, unit: "lb" } } });
    expect([...other.values()]).not.toContain("Gross weight");
    expect(beside(other, /^Net weight/)).toBe(12.35);
  });

  it("says how sure the recovery is, by LOT.RECOVERYU from the shop's scale and assay", async () => {
    const { cells } = await written(settling);
    expect(beside(cells, /^Its uncertainty/)).toBeCloseTo(settlementFigures(settling).recoveryUncertainty ?? NaN, 12);
    const { uncertainty: _, ...unsure } = settling;
    expect([...(await written(unsure)).cells.values()]).not.toContain("Its uncertainty");
  });

  it("follows an assay that is changed in it later", async () => {
    const { port, cells } = await written(settling);
    const row = [...cells].find(([cell, value]) => cell.startsWith("A") && value === "Ours")?.[0].slice(1);
    await port.write([{ sheet: NAME, cell: `B${row}`, content: 803 }]);
    const after = new Map([...port.file.cells(NAME)].map(({ address, value }) => [address, value]));
    expect(beside(after, /^Agreed fineness/)).toBe(801.5);
    expect(beside(after, /^Payout/)).toBeGreaterThan(beside(cells, /^Payout/));
  });

  it("accounts for the whole charge, and says when more came out than went in", () => {
    const sum = (input: StatementInput): number => (settlementFigures(input).flow ?? []).reduce((total, { ozt }) => total + ozt, 0);
    expect(sum(settling)).toBeCloseTo(settlementFigures(settling).fine, 9);
    const over = settlementFigures({ ...settling, found: { outturn: { value: 5, unit: "kg" } } });
    expect(over.flow?.find(({ label }) => label === "Unaccounted")?.ozt).toBeLessThan(0);
    expect(over.recovery).toBeGreaterThan(1);
  });

  it("settles on the one assay where there is one alone, and asks for the limit and the umpire where there are two", () => {
    expect(agreedFineness({ theirs: "92.5%" }).value()).toBe(925);
    expect(() => settlementFigures({ ...settling, assays: { ours: 800, theirs: 790 } })).toThrow(/splitting limit/);
    expect(() => settlementFigures({ ...settling, assays: { ours: 800, theirs: 790, limit: 3 } })).toThrow(/needs an umpire assay/);
    expect(settlementFigures({ ...settling, assays: { ours: 800, theirs: 790, limit: 3, umpire: 796 } }).fineness).toBe(796);
    expect(() => settlementFigures({ ...settling, assays: {} })).toThrow(/Write our assay, the client's, or both/);
  });

  it("writes a client's name that looks like a formula as a text, and is undone byte for byte", async () => {
    const port = new FilePort(openXlsx(sample));
    const { undo } = await port.write([statementSheet(settling, NAME).sheet]);
    const client = [...port.file.cells(NAME)].find(({ value }) => value === "=North Bench");
    expect(client).toMatchObject({ formula: null });
    await undo();
    expect(Buffer.compare(port.file.bytes, sample)).toBe(0);
  });

  it("returns metal for what is left after charges, and none where nothing is", async () => {
    const { cells } = await written({ ...settling, payment: "metal" });
    expect(beside(cells, /^Fine metal returned/)).toBe(settlementFigures({ ...settling, payment: "metal" }).metal);
    const poor: StatementInput = { ...settling, payment: "metal", weight: { value: 20, unit: "g" } };
    expect(settlementFigures(poor).metal).toBeNull();
  });

  outside("soffice", "opened by LibreOffice", (soffice) => {
    it("shows the stored values, and the bookkeeper's copy computes to the same ones", async () => {
      const scale = { gross: { value: 12.85, unit: "lb" }, tare: { value: 0.5, unit: "lb" } };
      for (const input of [{ ...settling, scale }, { ...settling, payment: "metal", metalUnit: "g" } as const]) {
        const { port } = await written(input);
        const stored = [...port.file.cells(NAME)].filter(({ value }) => typeof value === "number");
        const { bytes } = await share(port.file);
        const parts = unzipSync(bytes);
        for (const [part, content] of Object.entries(parts)) if (/worksheets\/sheet\d+\.xml$/.test(part)) parts[part] = strToU8(new TextDecoder().decode(content).replace(/(<f(?:\s[^>]*)?(?:\/>|>[^<]*<\/f>))<v>[^<]*<\/v>/g, "$1"));
        for (const sheets of [shownBy(soffice, port.file.bytes), shownBy(soffice, zipSync(parts))]) {
          const rows = sheets.get(NAME) ?? [];
          for (const { row, column, value, address } of stored) {
            const shown = rows[row - 1]?.[column - 1] ?? "";
            if (/^\d{4}-\d{2}-\d{2}$/.test(shown)) continue;
            const number = shown.endsWith("%") ? Number(shown.slice(0, -1)) / 100 : Number(shown.replace(/[^\d.eE+-]/g, ""));
            expect(Math.abs(number - Number(value)), `${address} shows ${shown} for ${String(value)}`).toBeLessThanOrEqual(1e-9 * Math.max(1, Math.abs(Number(value))));
          }
        }
      }
    }, 90_000);

    outside("pdfinfo", "and printed", (pdfinfo) => {
      it.each(["letter", "A4"] as const)("takes one page of %s", async (paper) => {
        const { port } = await written({ ...settling, shop: { ...settling.shop, paper } });
        const folder = mkdtempSync(join(tmpdir(), "lotwright-statement-"));
        try {
          const alone = openXlsx(port.file.bytes);
          const hidden = alone.patch([], { withoutSheets: alone.sheets.map(({ name }) => name).filter((name) => name !== NAME) });
          writeFileSync(join(folder, "statement.pdf"), convertedTo(soffice, "statement.xlsx", hidden, "pdf"));
          const { stdout } = spawnSync(pdfinfo, [join(folder, "statement.pdf")], { encoding: "utf8" });
          expect(stdout).toMatch(/^Pages:\s+1$/m);
          expect(stdout).toMatch(paper === "A4" ? /595\.\d+ x 841\.\d+/ : /612 x 792/);
        } finally {
          rmSync(folder, { recursive: true, force: true });
        }
      }, 60_000);
    });
  });
});
