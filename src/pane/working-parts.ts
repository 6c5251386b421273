import type { WorkingLine } from "../core/expression/working";
import { h } from "./dom";

type Part = WorkingLine["part"];

const TITLES: Readonly<Record<Part, string>> = {
  rule: "In words",
  formula: "Formula",
  given: "Put in",
  constant: "Constants",
  step: "Steps",
  rounding: "Rounding",
  result: "Result",
  caution: "Caution",
  source: "Source",
};

/** The lines of a working, set part by part. */
export function workingParts(lines: readonly WorkingLine[]): HTMLElement {
  const parts = [...new Set(lines.map(({ part }) => part))];
  return h("dl", { class: "lw-parts" }, ...parts.map((part) => partOf(part, lines.flatMap((line) => (line.part === part ? [line.text] : [])))));
}

const partOf = (part: Part, texts: readonly string[]): HTMLElement =>
  h("div", { class: `lw-part lw-part-${part}${part === "caution" ? " lw-caution" : ""}` }, h("dt", {}, TITLES[part]), ...described(part, texts));

function described(part: Part, texts: readonly string[]): HTMLElement[] {
  switch (part) {
    case "formula":
    case "step":
      return texts.map((text) => h("dd", { class: "lw-equation" }, ...equation(text)));
    case "constant":
      return constants(texts);
    default:
      return texts.map((text) => h("dd", {}, text));
  }
}

/** Each equals sign begins a line of its own. */
const equation = (text: string): HTMLElement[] => text.split(/(?= = )/).map((side) => h("span", {}, side));

/** A constant's text ends with its source in brackets; the sources, which are long, are folded away. */
function constants(texts: readonly string[]): HTMLElement[] {
  const read = texts.map((text) => {
    const at = text.indexOf(" (", text.indexOf(" = "));
    return { what: text.slice(0, at), source: text.slice(at + 2, -1) };
  });
  const sources = [...new Set(read.map(({ source }) => source))];
  return [
    ...read.map(({ what }) => h("dd", {}, what)),
    h("dd", {}, h("details", { class: "lw-sources" }, h("summary", {}, sources.length === 1 ? "Their source" : "Their sources"), ...sources.map((source) => h("p", {}, sourceText(source, sources.length, read))))),
  ];
}

/** Where there are several sources each says of what it is one. */
const sourceText = (source: string, count: number, all: readonly { readonly what: string; readonly source: string }[]): string =>
  count === 1 ? source : `${all.filter((one) => one.source === source).map(({ what }) => what.split(" = ")[0]).join(", ")}: ${source}`;
