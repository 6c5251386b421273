import { spawnSync } from "node:child_process";
import { strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { dayNumber, readDay } from "../../src/lots/calendar";
import type { MonthInput } from "../../src/month/month-input";
import { ROWS } from "../../src/month/month-places";
import { share } from "../../src/sharing/share";
import type { CellReading } from "../../src/workbook/port";
import { outside } from "../outside";
import { shownBy } from "../workbook/libreoffice";
import { APRIL, MARCH, SHOP, close, liquor, metal, placed, twoMonths } from "./books";

const INPUTS = {
  "one scale weighs everything": { ...SHOP, bias: 0.002, month: MARCH, opening: { fine: 100, uncertainty: 0.3 }, counted: [metal("Crystal", 21000, "g", 0.9999), metal("Stubs", 2000, "g", 0.02, 0.2), liquor("Spent liquor", 120, 0.3, 0.1)], shipped: [metal("Bars", 28000, "g", 0.999)] },
  "lots are weighed in on another scale": { ...SHOP, bias: 0.0005, weighInBias: 0.003, month: MARCH, opening: { fine: 100, uncertainty: 0.3 }, counted: [metal("Crystal", 21000, "g", 0.9999), { kind: "lot", lot: "26-012" }], shipped: [metal("Bars", 28000, "g", 0.999)] },
} as const satisfies Readonly<Record<string, MonthInput>>;

/** The balance as one who knows nothing of ours writes it: each reading once, a scale's bias one variable in all that it weighed. */
const PROGRAM = `
import json, sys
from uncertainties import ufloat
given = json.load(sys.stdin)
OZT = 31.1034768
weigh = ufloat(1, given["bias"])
weigh_in = weigh if given["weighInBias"] is None else ufloat(1, given["weighInBias"])
lots = {lot: ufloat(net, given["scale"]) * ufloat(fineness, given["assay"]) / OZT for lot, net, fineness in given["lots"]}
def line(one):
    if one["kind"] == "lot":
        return lots[one["lot"]] * weigh_in
    if one["kind"] == "liquor":
        fine = one["litres"] * one["gramsPerLitre"]
        return ufloat(fine, fine * one["uncertainty"]) / OZT * weigh
    fine = one["weight"] * one["fineness"]
    if one["uncertainty"] is not None:
        return ufloat(fine, fine * one["uncertainty"]) / OZT * weigh
    return ufloat(one["weight"], given["scale"]) * ufloat(one["fineness"], given["assay"]) / OZT * weigh
received = sum(lots.values()) * weigh_in
closing = sum(line(one) for one in given["counted"])
shipped = sum(line(one) for one in given["shipped"])
gap = ufloat(*given["opening"]) * weigh + received - shipped - closing
json.dump({"gap": gap.nominal_value, "u": gap.std_dev, "received": received.nominal_value, "closing": closing.nominal_value}, sys.stdout)
`;

outside("python uncertainties", "Python propagates a month's balance, reading by reading, as its sheet does", (python) => {
  it.each(Object.entries(INPUTS))("when %s", async (_, input) => {
    const closed = await close(await placed(await twoMonths()), input);
    const lots = closed.basis.received.map(({ lot }) => [lot.value("lot"), Number(lot.value("net")), Number(lot.value("fineness")) / 1000]);
    const given = { ...input, scale: input.scale.value, assay: input.assay / 1000, opening: [input.opening.fine, input.opening.uncertainty], lots };
    const { status, stdout, stderr } = spawnSync(python, ["-c", PROGRAM], { input: JSON.stringify(given), encoding: "utf8" });
    const theirs = JSON.parse(status === 0 ? stdout : "{}") as Record<"gap" | "u" | "received" | "closing", number>;
    expect(lots.length, stderr).toBe(12);
    const close12 = (ours: number, other: number): void => expect(Math.abs(ours / other - 1), `${ours} and ${other}: ${stderr}`).toBeLessThan(1e-10);
    close12(await closed.number(`B${ROWS.received}`), theirs.received);
    close12(await closed.number(`B${ROWS.closing}`), theirs.closing);
    expect(Math.abs((await closed.number(`B${ROWS.unaccounted}`)) - theirs.gap)).toBeLessThan(1e-9);
    close12(await closed.number(`B${ROWS.expanded}`), 2 * theirs.u);
  });
});

const decode = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes ?? new Uint8Array());

/** Without the results that are stored beside formulas, so that whoever opens it computes every cell. */
function withoutResults(bytes: Uint8Array): Uint8Array {
  const parts = unzipSync(bytes);
  for (const [name, part] of Object.entries(parts))
    if (/worksheets\/sheet\d+\.xml$/.test(name)) parts[name] = strToU8(decode(part).replace(/(<f(?:\s[^>]*)?(?:\/>|>[^<]*<\/f>))<v>[^<]*<\/v>/g, "$1"));
  return zipSync(parts);
}

/** The cells that LibreOffice shows otherwise than we do. */
function differing(ours: readonly (readonly CellReading[])[], theirs: readonly (readonly string[])[]): { readonly compared: number; readonly cells: readonly string[] } {
  const cells: string[] = [];
  let compared = 0;
  ours.forEach((row, r) =>
    row.forEach(({ value, formula }, c) => {
      const shown = theirs[r]?.[c] ?? "";
      if (formula !== null) compared++;
      const day = readDay(shown);
      const number = day ? dayNumber(day) : shown.endsWith("%") ? Number(shown.slice(0, -1)) / 100 : Number(shown);
      const isSame = typeof value === "number" ? shown !== "" && Math.abs(number - value) <= 1e-11 * Math.max(1, Math.abs(value)) : shown === String(value ?? "");
      if (!isSame) cells.push(`${String.fromCharCode(65 + c)}${r + 1} ${formula ?? ""}: ${String(value)}, ${shown}`);
    }),
  );
  return { compared, cells };
}

outside("soffice", "LibreOffice opens two closed months", (soffice) => {
  describe("one after the other", () => {
    const made = async () => {
      const port = await placed(await twoMonths());
      const first = await close(port, INPUTS["lots are weighed in on another scale"]);
      const second = await close(port, { ...INPUTS["one scale weighs everything"], month: APRIL, opening: null });
      return { port, names: [first.name, second.name] };
    };

    it.each(["with the values that are stored in it", "as a shared copy, computed anew"])("%s: every cell shows the same", async (how) => {
      const { port, names } = await made();
      const shared = how.startsWith("as") ? await share(port.file) : null;
      if (shared) expect(shared.cells.filter(({ now }) => now === null)).toEqual([]);
      const sheets = shownBy(soffice, shared ? withoutResults(shared.bytes) : port.file.bytes);
      for (const name of names) {
        const { compared, cells } = differing(await port.read({ sheet: name, range: "A1:J90" }), sheets.get(name) ?? []);
        expect(cells, name).toEqual([]);
        expect(compared).toBeGreaterThan(150);
      }
    }, 60_000);
  });
});
