import { number, over, times } from "../core/expression/native";
import { whole } from "../core/expression/notation";
import { Ratio, one } from "../core/expression/ratio";
import { show } from "../core/expression/show";
import { fail, quoted } from "../core/fault";
import { readFineness, scales, standards } from "../core/measure/fineness";
import { type BoundNumber, type Otherwise, like, single } from "./bound";
import { Reference, held } from "./reference";
import { type Reader, finenessReader, fromZero, literalText } from "./reader";

export const fineness = (name: string, cell: unknown, reader = finenessReader, otherwise?: Otherwise): BoundNumber =>
  single(name, cell, reader, otherwise);

/** The same, in parts per thousand. */
export const inPerThousand = (fraction: BoundNumber): BoundNumber =>
  like(fraction, {
    read: () => fraction.read().over(scales.ppt),
    words: () => `${show(fraction.read().over(scales.ppt))} ‰`,
    native: () => {
      const given = fraction.native();
      return given && over(given, number(scales.ppt));
    },
  });

/** A named standard of fineness. */
export const standard = (name: string, cell: unknown): BoundNumber => single(name, cell, standardReader);

const standardReader: Reader = {
  wants: `the name of a standard: ${standards.symbols.join(", ")}`,
  read: (cell, name) =>
    typeof cell === "string"
      ? standards.find(cell, name).size
      : fail({ kind: "unfit", name, got: quoted(cell), wants: standardReader.wants }),
  native: (cell) => {
    const [sizes, names] = [standards.units.map(({ size }) => size.toNumber()), standards.symbols.map(literalText)];
    return whole(`INDEX({${sizes.join(",")}},1,MATCH(${cell.text},{${names.join(",")}},0))`);
  },
  nativeEach: (range) => range,
};

/** A difference or uncertainty of a fineness: on the scale in which that fineness is written, or a text with its own. */
export function onScaleOf(name: string, cell: unknown, finenessCell: unknown): BoundNumber {
  const own = typeof held(cell) === "string";
  const written = held(finenessCell);
  const scale = (): Ratio =>
    own || (typeof written !== "number" && typeof written !== "string") ? one : scales[readFineness(written, "fineness").scale];
  const value = single(name, cell, differenceReader);
  const read = (): Ratio => value.read().times(scale());
  return like(value, {
    read,
    native() {
      const given = value.native();
      if (!given || own) return given;
      if (!(finenessCell instanceof Reference)) return times(given, number(scale()));
      return typeof written === "string" ? null : times(given, whole(`IF(${finenessCell.text}>1,0.001,1)`));
    },
    words: () => [...new Set([value.words(), show(read())])].join(" = "),
  });
}

const DIFFERENCE = /^\s*(\d{1,15}(?:\.\d{0,15})?)\s*(%|‰)\s*$/;

const differenceReader: Reader = {
  ...fromZero,
  wants: 'a number from 0 up on the scale of the fineness, or a text with its own such as "0.5‰"',
  read(cell, name) {
    if (typeof cell === "number") return fromZero.read(cell, name);
    const [, digits, sign] = typeof cell === "string" ? (DIFFERENCE.exec(cell) ?? []) : [];
    if (digits === undefined) return fail({ kind: "unfit", name, got: quoted(cell), wants: differenceReader.wants });
    return Ratio.of(digits).times(sign === "%" ? scales["%"] : scales.ppt);
  },
  // A spreadsheet counts with a text such as 0.5% too, but on no scale of a fineness: a number alone is let through.
  native: (cell, holds) =>
    whole(
      typeof holds === "string"
        ? `IF(${cell.text}=${literalText(holds)},${differenceReader.read(holds, "difference").toNumber()},NA())`
        : `IF(${cell.text}<=1000,${cell.text},NA())`,
    ),
};
