import table from "../../shared/tables/acid-density.json";
import { number } from "../core/expression/native";
import { type Piece, binds } from "../core/expression/notation";
import { Ratio, one } from "../core/expression/ratio";
import { show } from "../core/expression/show";
import { fail, quoted } from "../core/fault";
import { type BoundNumber, type Otherwise, single } from "./bound";
import { type Reader, share } from "./reader";
import { Reference } from "./reference";

const rows = table.rows.map(({ percent, density }) => ({ at: Ratio.of(percent).over(Ratio.of(100)), density: Ratio.of(density) }));
const [weakest, strongest] = [rows[0], rows[rows.length - 1]].map((row) => row?.at ?? one) as [Ratio, Ratio];
const COMMON: Otherwise = { value: Ratio.of("0.68"), text: "68%" };

const WANTS = `a strength by mass from 5% to 70%, as 0.68 or "68%"`;

export const strengthReader: Reader = {
  ...share,
  wants: WANTS,
  read(cell, name) {
    const strength = share.read(cell, name);
    const fits = strength.compare(weakest) >= 0 && strength.compare(strongest) <= 0;
    return fits ? strength : fail({ kind: "unfit", name, got: quoted(cell), wants: WANTS });
  },
};

/** The strength of nitric acid by mass. */
export const strength = (name: string, cell: unknown, otherwise?: Otherwise): BoundNumber =>
  single(name, cell, strengthReader, otherwise);
export const commonAcid = COMMON;

/** The density of nitric acid of that strength at 20 °C, read on straight lines between the rows of the table. */
export function density(name: string, cell: unknown, otherwise?: Otherwise): BoundNumber {
  const given = strength(name, cell, otherwise);
  const read = (): Ratio => interpolated(given.read());
  return {
    notes: [],
    read,
    native() {
      const at = given.native();
      return at && (cell instanceof Reference ? interpolation(at) : number(read()));
    },
    words: () => `${show(read())} g/mL at 20 °C (${sourceAt(given.read())})`,
  };
}

/** The row at or below a strength; the last line serves the last row too. */
const lineAt = (strength: Ratio): number => {
  const above = rows.findIndex(({ at }) => at.compare(strength) > 0);
  return (above === -1 ? rows.length - 1 : above) - 1;
};

function interpolated(strength: Ratio): Ratio {
  const line = lines[lineAt(strength)];
  return line ? line.start.plus(line.slope.times(strength)) : fail({ kind: "not-finite", what: "density" });
}

/** Density = start + slope × strength, from each row to the next. */
const lines = rows.slice(0, -1).map((row, i) => {
  const next = rows[i + 1] ?? row;
  const slope = next.density.minus(row.density).over(next.at.minus(row.at));
  return { from: row.at, start: row.density.minus(slope.times(row.at)), slope };
});

function interpolation(at: Piece): Piece {
  const list = (pick: (line: (typeof lines)[number]) => Ratio): string => lines.map((line) => number(pick(line)).text).join(",");
  // A text such as 68% is a number where it is counted with, but not where it is looked for.
  const row = `MATCH(1*${at.binds < binds.product ? `(${at.text})` : at.text},{${list(({ from }) => from)}},1)`;
  return {
    text: `INDEX({${list(({ start }) => start)}},1,${row})+INDEX({${list(({ slope }) => slope)}},1,${row})*${at.binds < binds.product ? `(${at.text})` : at.text}`,
    binds: binds.sum,
  };
}

function sourceAt(strength: Ratio): string {
  const i = lineAt(strength);
  const sources = [table.rows[i], table.rows[i + 1]].map((row) => table.sources[(row?.source ?? "crc") as keyof typeof table.sources]);
  return [...new Set(sources)].join("; ");
}
