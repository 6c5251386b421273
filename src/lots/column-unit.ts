import type { Content } from "./content";
import type { Field } from "./fields";
import type { ColumnUnit, Doubt } from "./list";
import type { Measure } from "./words";

interface Told {
  readonly unit: ColumnUnit | null;
  readonly doubt: Doubt | null;
}

const unknown = (sentence: string): Told => ({ unit: { symbol: null, from: null }, doubt: { degree: 0.8, sentence } });
const known = (symbol: string, from: "heading" | "unit column" | "cells"): Told => ({ unit: { symbol, from }, doubt: null });

/** The unit of a column, from its heading, the unit column or its cells; where they do not say, the question. */
export function unitOf({ kind, id, title }: Field, measure: Measure | null, content: Content, hasUnitColumn: boolean): Told {
  switch (kind) {
    case "mass":
      if (measure?.kind === "mass") return measure.unit === null ? unknown(measure.asks ?? "") : known(measure.unit, "heading");
      if (hasUnitColumn && (id === "gross" || id === "tare" || id === "net")) return { unit: { symbol: null, from: "unit column" }, doubt: null };
      if (hasUnitColumn && measure?.kind === "by unit column") return { unit: { symbol: null, from: "unit column" }, doubt: null };
      return unknown(`The heading does not say the unit of ${title.toLowerCase()}: say it`);
    case "volume":
      return measure?.unit ? known(measure.unit, "heading") : unknown("The heading does not say the unit of the acid: say it");
    case "per mass":
      if (measure?.asks) return unknown(`A price per ‘oz’: ${measure.asks}`);
      return measure?.unit && measure.kind !== "money" ? known(measure.unit, "heading") : unknown(`The heading does not say per what the ${title.toLowerCase()} is: per ozt, lb, kg or g`);
    case "fineness":
      return finenessScale(measure, content);
    case "share":
      return shareScale(content, measure);
    case "per thousand":
      return known(measure?.kind === "percent" ? "%" : "ppt", measure === null ? "cells" : "heading");
    default:
      return { unit: null, doubt: null };
  }
}

function finenessScale(measure: Measure | null, { numbers, texts, percents }: Content): Told {
  // Texts such as "92.5%" say their scale themselves, and so do numbers from 100 up and from 0 to 1.
  if (texts.length > numbers.length) return known("as written", "cells");
  const top = Math.max(0, ...numbers);
  if (percents > 0 || (numbers.length > 0 && top <= 1)) return known("fraction", "cells");
  if (measure?.kind === "karat") return known("karat", "heading");
  if (measure?.kind === "percent") return top > 100 ? { ...known("ppt", "cells"), doubt: { degree: 0.5, sentence: "The heading says %, but its numbers are parts per thousand" } } : known("%", "heading");
  if (measure?.kind === "per thousand") return known("ppt", "heading");
  if (numbers.length === 0) return known("as written", "cells");
  return numbers.some((n) => n > 1 && n < 100) ? { unit: { symbol: null, from: null }, doubt: null } : known(texts.length > 0 ? "as written" : "ppt", "cells");
}

const shareScale = ({ numbers, percents }: Content, measure: Measure | null): Told => {
  if (percents > 0) return known("fraction", "cells");
  if (numbers.length > 0) return known(numbers.every((n) => n <= 1.5) ? "fraction" : "%", "cells");
  return known("fraction", measure === null ? "cells" : "heading");
};
