import type { Random } from "../random";

const NUMBERS = [
  0, -0, 1, -1, 0.5, 0.925, 1.2, 22, 92.5, 98, 100, 925, 999.9, 1000, 1000.1, 45_931,
  5e-324, -5e-324, 2.2e-308, 1e-15, 1e15, 1.0000000001e15, 2 ** 53 - 1, 2 ** 53, 2 ** 53 + 2, -(2 ** 53), 1e21, 1e308, -1e308, Number.MAX_VALUE,
  0.1 + 0.2, 1 / 3, 2_958_465, 2_958_466, NaN, Infinity, -Infinity,
] as const;

const TEXTS = [
  "", " ", "\u00a0", "-", "?", "n/a", "g", "G ", "ozt", "oz", "lb", "kg", "L", "mL", "gal", "cfm", "‰", "%", "k",
  "sterling", "Sterling ", "coin", "925", "92.5%", "92,5%", "925‰", "22k", "22 karat", "98%", "98 %", "1e5%", "-3%", "0%", "100.0000001%", ".5%", "%5", "1000/1000", "1001 /1000",
  "5‰", "0.5%", "2 half-even", "7 half-even", "half-even", "1,000", "1.000,00", "1 000", "1'000", "$24.50", "(5)", "1e3", "0x10", "Infinity", "NaN", "1/3",
  "٩٢٥", "９２５", "九百", "½", "²", "𝟗𝟐𝟓", "é", "e\u0301", "\u202e925", "\ufeff925", "\u200b", "\ud800", "\udfff\ud800", "😀", "\u0000", "a\nb", "\t925",
  "=1+1", "=LOT.COPPER(10)", "+1", "@SUM(1)", "'925", '"', '""', "#N/A", "#VALUE!", "TRUE", "false",
  "__proto__", "constructor", "toString", "hasOwnProperty", "valueOf", "prototype", "length",
  "zinc", "glucose", "Na2CO3", "ppt", "karat", "fraction",
  "x".repeat(41), "9".repeat(400), "0.".padEnd(300, "3"), " ".repeat(5000), "g".repeat(3000), `${"9".repeat(15)}.${"9".repeat(15)}%`,
] as const;

/** One cell as a sheet may hold it, and some that none should. */
export function cell(r: Random): unknown {
  switch (r.whole(0, 9)) {
    case 0:
    case 1:
      return r.pick(NUMBERS);
    case 2:
      return number(r);
    case 3:
    case 4:
      return r.pick(TEXTS);
    case 5:
      return text(r);
    case 6:
      return r.chance(0.5);
    case 7:
      return r.pick([null, undefined, ""]);
    case 8:
      return entity(r);
    default:
      return r.decimal(-1, 1000, r.whole(0, 6));
  }
}

/** Of any size, down to the smallest and up to the largest that a double holds. */
const number = (r: Random): number => (r.chance(0.3) ? -1 : 1) * r.next() * 10 ** r.whole(-320, 308);

function text(r: Random): string {
  if (r.chance(0.4)) return `${number(r)}${r.pick(["", "%", " %", "‰", "k", " kt", "g", " ozt", "/1000"])}`;
  if (r.chance(0.3)) return r.pick(TEXTS) + r.pick(TEXTS);
  return Array.from({ length: r.whole(1, 12) }, () => String.fromCharCode(r.chance(0.7) ? r.whole(32, 126) : r.whole(0, 0xffff))).join("");
}

/** Data types as Excel passes them: an object, with or without a plain value in it. */
export function entity(r: Random): unknown {
  const held = r.pick<unknown>([24.5, "ozt", "92.5%", true, "#VALUE!", 1e308, null, -0]);
  return r.pick<unknown>([
    { type: "FormattedNumber", basicType: "Double", basicValue: r.pick(NUMBERS), numberFormat: "$0.00" },
    { type: "Double", basicType: "Double", basicValue: 925 },
    { type: "String", basicType: "String", basicValue: "sterling" },
    { type: "Boolean", basicType: "Boolean", basicValue: true },
    { type: "Empty", basicType: "Empty", basicValue: "" },
    { type: "Error", errorType: "Div0", basicType: "Error", basicValue: "#DIV/0!" },
    { type: "Entity", text: "Lot 7", properties: { Net: { type: "Double", basicValue: 500 } }, basicType: "Error", basicValue: "#VALUE!" },
    { type: "LinkedEntity", serviceId: 268_435_456, basicType: "Error", basicValue: "#VALUE!" },
    { type: "WebImage", address: "https://example.org/x.png", basicType: "Error", basicValue: "#VALUE!" },
    { type: "Array", elements: [[{ type: "Double", basicValue: 1 }]], basicType: "Error", basicValue: "#VALUE!" },
    { type: "Reference", reference: "A1" },
    { basicValue: held },
    { basicValue: { basicValue: held } },
    {},
    Object.create(null),
  ]);
}

/** A range as rows of cells, now and then one that no host gives: without rows, ragged, flat or nested. */
export function range(r: Random, one: (r: Random) => unknown = cell): unknown {
  const columns = r.pick([1, 1, 1, 2, 3, 16]);
  const row = (length: number): unknown[] => Array.from({ length }, () => one(r));
  const rows = Array.from({ length: r.chance(0.005) ? r.whole(500, 3000) : r.whole(1, 6) }, () => row(columns));
  if (!r.chance(0.15)) return rows;
  return r.pick<() => unknown>([() => [], () => [[]], () => [[], []], () => rows.map(() => row(r.whole(0, 3))), () => row(3), () => [rows, rows], () => [[rows]]])();
}
