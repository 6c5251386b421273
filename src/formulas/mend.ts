import { NAMESPACE, find } from "../catalogue/catalogue";
import { nearestName } from "./nearest-name";
import { type Token, tokens } from "./tokens";

/** What is wrong with how a formula writes one of our names. */
export type Slip =
  /** One of our names is much like it. */
  | "near"
  /** What a file, another program or an add-in of another kind puts before a name: _xldudf_LOT_COPPER, [1]!LOT.COPPER. */
  | "prefix"
  /** An @ before the name, as older programs write it: the first cell alone. */
  | "at"
  | "letters";

export interface Mended {
  /** With our names as they are to be; the formula itself where there is nothing to mend. */
  readonly formula: string;
  readonly slips: ReadonlySet<Slip>;
  /** Names that were taken for others: LOT.FINEWIGHT for LOT.FINEWEIGHT. */
  readonly taken: readonly { readonly from: string; readonly for: string }[];
  /** Names under our namespace that nothing of ours resembles. */
  readonly unknown: readonly string[];
  /** Whether one of our functions, or what looks like one, is called. */
  readonly isOurs: boolean;
}

/** Reads a formula, with its equals sign, whose names may have suffered on their way through other programs. */
export function mend(formula: string): Mended {
  const mender = new Mender();
  const text = mender.text(tokens(formula));
  return { formula: mender.slips.size === 0 ? formula : text, slips: mender.slips, taken: mender.taken, unknown: mender.unknown, isOurs: mender.calls > 0 };
}

interface FoundCall {
  readonly name: string;
  readonly isCut: boolean;
  readonly slips: readonly Slip[];
  /** Where its brackets open and close, and where what stands around it ends. */
  readonly open: number;
  readonly close: number;
  readonly end: number;
}

class Mender {
  readonly slips = new Set<Slip>();
  readonly taken: { from: string; for: string }[] = [];
  readonly unknown: string[] = [];
  calls = 0;

  text(all: readonly Token[]): string {
    let text = "";
    for (let at = 0; at < all.length; ) {
      const call = cutCall(all, at) ?? callAt(all, at, []);
      if (!call) {
        text += all[at]?.text ?? "";
        at++;
        continue;
      }
      const name = this.#named(call);
      const whole = `${name}(${this.text(all.slice(call.open + 1, call.close))})`;
      // Its first cell alone, in a way that every spreadsheet reads.
      text += call.isCut && find(name)?.spills ? `INDEX(${whole},1,1)` : whole;
      at = call.end;
    }
    return text;
  }

  #named({ name, slips }: FoundCall): string {
    this.calls++;
    for (const slip of slips) this.slips.add(slip);
    if (find(name)) return name;
    const near = nearestName(name);
    if (near === undefined) {
      this.unknown.push(name);
      return name;
    }
    this.slips.add("near");
    this.taken.push({ from: name, for: near });
    return near;
  }
}

/** An @ before a call, or SINGLE around it, as a file stores that. */
function cutCall(all: readonly Token[], at: number): FoundCall | null {
  if (all[at]?.text === "@") return cut(callAt(all, pastSpaces(all, at + 1), ["at"]));
  if (!/^(?:_xlfn\.)?SINGLE$/i.test(all[at]?.text ?? "")) return null;
  const open = pastSpaces(all, at + 1);
  const close = closing(all, open);
  const call = close === null ? null : callAt(all, pastSpaces(all, open + 1), ["at"]);
  return call && close !== null && pastSpaces(all, call.end) === close ? cut({ ...call, end: close + 1 }) : null;
}

const cut = (call: FoundCall | null): FoundCall | null => call && { ...call, isCut: true };

const PREFIX = /^(?:_xl(?:fn|ws|udf|l|dudf)[._])+/i;

function callAt(all: readonly Token[], start: number, around: readonly Slip[]): FoundCall | null {
  const isBook = all[start]?.kind === "columns" && all[start + 1]?.text === "!";
  const at = isBook ? start + 2 : start;
  const token = all[at];
  if (token?.kind !== "function" && token?.kind !== "name") return null;
  const open = pastSpaces(all, at + 1);
  const close = closing(all, open);
  if (close === null) return null;
  const ofBook = token.text.replace(/^.*!/s, "");
  const own = ofBook.replace(PREFIX, "");
  const [, id] = new RegExp(String.raw`^${NAMESPACE}[._]([A-Z\d._]+)$`, "i").exec(own) ?? [];
  if (id === undefined) return null;
  const name = `${NAMESPACE}.${id.replaceAll("_", ".")}`.toUpperCase();
  const hasPrefix = isBook || own !== token.text;
  const isForeign = isBook || ofBook !== token.text || (own === ofBook && own.includes("_"));
  // Somebody else's function may begin with LOT_ too, or stand in another workbook.
  if (isForeign && !find(name)) return null;
  const slips: Slip[] = [...around];
  if (hasPrefix || own.includes("_")) slips.push("prefix");
  else if (own !== name) slips.push("letters");
  return { name, isCut: false, slips, open, close, end: close + 1 };
}

function pastSpaces(all: readonly Token[], at: number): number {
  while (all[at]?.kind === "space") at++;
  return at;
}

/** Where the bracket that opens here closes; null where none opens or closes. */
function closing(all: readonly Token[], open: number): number | null {
  if (all[open]?.text !== "(") return null;
  let depth = 0;
  for (let at = open; at < all.length; at++) {
    if (all[at]?.kind === "open") depth++;
    if (all[at]?.kind === "close" && --depth === 0) return at;
  }
  return null;
}
