import { catalogue } from "../../src/catalogue/catalogue";
import type { Random } from "../random";

const TOKENS = [
  "=", "(", ")", "{", "}", "[", "]", ",", ";", ":", "!", "@", "#", "$", "%", "&", "+", "-", "*", "/", "^", "<", ">", "<=", "<>", '"', '""', "'", " ", "\n", "\u00a0",
  "1", "0", "-0", "925", "1e308", "1e-320", ".5", "5.", "1,5", "1;5", "9".repeat(30), '"g"', '"ozt"', '"oz"', '"92.5%"', '"é"', '"𝟗"', '"\ud800"', "TRUE", "#N/A", "#REF!", "#VALUE!",
  "A1", "$B$2", "A1:B3", "A:A", "1:1", "XFD1048576", "XFE1", "Sheet1!A1", "'Other sheet'!A1", "Nope!A1", "Lots[Net]", "[@Net]", "[Book.xlsx]S!A1", "{1,2;3,4}", "{1;2;3}",
  "SUM(", "IF(", "INDEX(", "ROUND(", "IFERROR(", "SEQUENCE(3)", "LET(x,1,x)", "LAMBDA(x,x)(1)", "LOT.", "lot.copper(", "LOT.NOPE(", "LOT.__PROTO__(", "LOT.CONSTRUCTOR(", "_xldudf_LOT_COPPER(", "ARRAY.ROW(", "INDIRECT(", "OFFSET(",
] as const;

const EXAMPLES = catalogue.flatMap(({ examples }) => examples.map(({ formula }) => formula));

/** Nothing a person would type on purpose, and much that happens while typing. */
export function formulaText(r: Random): string {
  switch (r.whole(0, 9)) {
    case 0:
      return tokens(r, r.whole(0, 25));
    case 1:
      return `=${r.pick(catalogue).name}(${tokens(r, r.whole(0, 12))})`;
    case 2:
      return nested(r);
    case 3:
      return long(r);
    case 4:
      return characters(r);
    case 5:
      return `=${r.pick(EXAMPLES).slice(1)}${r.pick(["+", "&", ",", ";", "=", ":", " "])}${r.pick(EXAMPLES).slice(1)}`;
    case 6:
      return r.pick(EXAMPLES).replaceAll(",", ";");
    default:
      return mutated(r);
  }
}

const tokens = (r: Random, count: number): string => Array.from({ length: count }, () => (r.chance(0.2) ? `${r.pick(catalogue).name}(` : r.pick(TOKENS))).join("");

const characters = (r: Random): string => Array.from({ length: r.whole(1, 60) }, () => String.fromCharCode(r.chance(0.6) ? r.whole(32, 126) : r.whole(0, 0xffff))).join("");

function mutated(r: Random): string {
  let text = r.pick(EXAMPLES);
  for (let n = r.whole(1, 4); n > 0; n--) {
    const at = r.whole(0, text.length);
    const end = Math.min(text.length, at + r.whole(0, 4));
    text = text.slice(0, at) + r.pick<() => string>([() => "", () => r.pick(TOKENS), () => text.slice(at, end).repeat(2), () => r.pick(EXAMPLES).slice(1), () => String.fromCharCode(r.whole(32, 126))])() + text.slice(end);
  }
  return text;
}

function nested(r: Random): string {
  const [open, close] = r.pick([["(", ")"], ["{", "}"], ["-", ""], ["", "%"], ["SUM(", ")"], ["LOT.WEIGHT(", ',"lb","g")'], ["IF(1,", ")"], ["INDEX(", ",1)"], ["[", "]"], ["'", ""], ['"', ""]] as const);
  const levels = r.pick([2, 10, 64, 65, 256, 257, 1000, r.chance(0.1) ? 10_000 : 700]);
  return `=${open.repeat(levels)}${r.pick(["1", "", 'LOT.COPPER(10,"lb")', "A1"])}${close.repeat(r.chance(0.7) ? levels : r.whole(0, levels))}`;
}

function long(r: Random): string {
  const piece = r.pick(["1+", "A1&", "1,", '"x"&', 'LOT.COPPER(10,"lb")+', "A1:B2,", "x", "é", "\ud800"]);
  return `=${r.pick(["", "LOT.COPPER(", "SUM("])}${piece.repeat(Math.ceil(r.pick([100, 4000, 8200, 9000, r.chance(0.2) ? 60_000 : 500]) / piece.length))}1`;
}
