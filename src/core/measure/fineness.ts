import table from "../../../shared/tables/fineness-standards.json";
import { fail, quoted } from "../fault";
import { Ratio, one, zero } from "../expression/ratio";
import { UnitTable } from "./unit-table";

/** The scales in which people write a fineness; each one's size is the fraction that 1 on it stands for. */
export const scales = {
  ppt: Ratio.of("0.001"),
  "%": Ratio.of("0.01"),
  fraction: one,
  karat: one.over(Ratio.of(24)),
} as const;
export type Scale = keyof typeof scales;

export interface Fineness {
  /** Parts of metal per part of alloy. */
  readonly fraction: Ratio;
  /** The scale in which it was written. */
  readonly scale: Scale;
}

export const FINENESS_WANTS =
  "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"";

/** Reads a fineness as people write it; a number above 1 and below 100 could be three things and is refused. */
export function readFineness(cell: number | string, name: string): Fineness {
  return typeof cell === "number" ? fromNumber(cell, cell, name) : fromText(cell, name);
}

function fromNumber(value: number, cell: number | string, name: string): Fineness {
  if (value >= 0 && value <= 1) return { fraction: Ratio.of(value), scale: "fraction" };
  if (value >= 100 && value <= 1000) return { fraction: Ratio.of(value).times(scales.ppt), scale: "ppt" };
  if (value > 1 && value < 100) return ambiguous(value, cell, name);
  return unfit(cell, name);
}

function ambiguous(value: number, cell: number | string, name: string): never {
  const permille = Number((value * 10).toPrecision(12));
  return fail({
    kind: "ambiguous",
    name,
    got: quoted(cell),
    because: "could be %, karat or ‰",
    write: value * 10 >= 100 ? `"${value}%" or ${permille}` : `"${value}%", "${value}k" or "${value}‰"`,
  });
}

const WRITTEN = /^(\d{1,20}(?:\.\d{0,20})?|\.\d{1,20})\s*(%|‰|\/\s*1000|k|kt|kts|ct|karat|carat)?$/i;

function fromText(text: string, name: string): Fineness {
  const trimmed = text.trim();
  const match = trimmed.length <= 60 ? WRITTEN.exec(trimmed) : null;
  if (!match) return { fraction: standard(text, name), scale: "ppt" };
  const [, digits = "", sign] = match;
  if (!sign) return fromNumber(Number(digits), text, name);
  const scale = sign === "%" ? "%" : sign === "‰" || sign.startsWith("/") ? "ppt" : "karat";
  const fraction = Ratio.of(digits).times(scales[scale]);
  return fraction.compare(zero) >= 0 && fraction.compare(one) <= 0 ? { fraction, scale } : unfit(text, name);
}

const unfit = (cell: number | string, name: string): never =>
  fail({ kind: "unfit", name, got: quoted(cell), wants: FINENESS_WANTS });

/** The named standards; the size of one is its fraction. */
export const standards = new UnitTable(
  Object.fromEntries(
    table.standards.map(({ name, ppt, spellings }) => [
      name,
      { size: Ratio.of(ppt).times(scales.ppt), spellings },
    ]),
  ),
);

/** The fraction of a named standard. */
const standard = (text: string, name: string): Ratio =>
  standards.find(text, name, 'a fineness such as 925, 0.925, "92.5%" or "22k"').size;
