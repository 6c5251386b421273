import { number } from "../core/expression/native";
import { type Piece, binds, whole } from "../core/expression/notation";
import { Ratio, one, zero } from "../core/expression/ratio";
import { show } from "../core/expression/show";
import { fail, quoted } from "../core/fault";
import { Reference, held, isBracketed, isEmpty } from "./reference";
import { type Reader, halfEvenReader } from "./reader";

/** What an argument must be, for help and reference page. */
export interface ArgumentNote {
  readonly name: string;
  readonly wants: string;
  /** What stands for it when it is left out. */
  readonly otherwise?: string;
}

/** An input of a formula, bound to the argument or arguments that give it. Nothing is read until it is asked for. */
export interface Bound<Read = Ratio | readonly Ratio[]> {
  readonly notes: readonly ArgumentNote[];
  read(): Read;
  /** How a spreadsheet reads it; null where it cannot. */
  native(): Piece | null;
  /** How it was given, for a working; null where that says nothing to a reader. */
  words(): string | null;
  /** The unit in which it was given, as text and as a spreadsheet writes it. */
  readonly unit?: { symbol(): string; native(): string };
}
export type BoundNumber = Bound<Ratio>;

/** The value of an argument that may be left out. */
export interface Otherwise {
  readonly value: Ratio;
  readonly text: string;
}
export const nothing: Otherwise = { value: zero, text: "0" };
export const all: Otherwise = { value: one, text: "100%" };
export const quarter: Otherwise = { value: Ratio.of("0.25"), text: "250" };
export const justOne: Otherwise = { value: one, text: "1" };
export const fourFifths: Otherwise = { value: Ratio.of("0.8"), text: "80%" };
export const cellEfficiency: Otherwise = { value: Ratio.of("0.95"), text: "95%" };
export const twoSigma: Otherwise = { value: Ratio.of(2), text: "2" };
export const twoPlaces: Otherwise = { value: Ratio.of(2), text: "2" };
/** For an argument whose formula asks first whether it was given. */
export const none: Otherwise = { value: one, text: "none" };

/** One cell. */
export const single = (name: string, cell: unknown, reader: Reader, otherwise?: Otherwise): BoundNumber => new Single(name, cell, reader, otherwise);

class Single implements BoundNumber {
  private readonly value: unknown;

  constructor(
    private readonly name: string,
    private readonly cell: unknown,
    private readonly reader: Reader,
    private readonly otherwise: Otherwise | undefined,
  ) {
    this.value = held(cell);
  }

  get notes(): readonly ArgumentNote[] {
    return [{ name: this.name, wants: this.reader.wants, ...(this.otherwise ? { otherwise: this.otherwise.text } : {}) }];
  }

  read(): Ratio {
    const { value, name, reader, otherwise } = this;
    return isEmpty(value) ? (otherwise?.value ?? fail({ kind: "missing", name, wants: reader.wants })) : reader.read(value, name);
  }

  native(): Piece | null {
    return this.cell instanceof Reference ? address(this.cell, this.reader, this.otherwise) : number(this.read());
  }

  words(): string {
    return isEmpty(this.value) ? `${this.otherwise?.text} (left out)` : given(this.cell, this.value, show(this.read()));
  }
}

function address(cell: Reference, reader: Reader, otherwise: Otherwise | undefined): Piece | null {
  const reading = reader.native(piece(cell), isEmpty(cell.holds) ? undefined : cell.holds);
  // An empty cell counts as 0 in a spreadsheet's formula, so any other value for "left out" must be said.
  return reading && otherwise && !otherwise.value.isZero()
    ? whole(`IF(${cell.text}="",${number(otherwise.value).text},${reading.text})`)
    : reading;
}

/** The same but for what is named. */
export const like = <T extends object>(bound: T, changed: Partial<T>): T => Object.create(bound, Object.getOwnPropertyDescriptors(changed)) as T;

/** A reference's text as a piece: an address or a call holds together, anything else is put in brackets. */
export const piece = ({ text }: Reference): Piece => ({ text, binds: HOLDS_TOGETHER.test(text) || isBracketed(text) ? binds.whole : binds.comparison });
const HOLDS_TOGETHER = /^(?:'[^']+'!|[\p{L}\d_.]+!)?[$\p{L}\d_.:[\]]+$|^[A-Z.]+\([^()]*\)$/u;

function given(cell: unknown, value: unknown, read: string): string {
  const shown = typeof value === "string" ? quoted(value) : String(value);
  const steps = cell instanceof Reference ? [cell.text, shown, read] : [shown, read];
  return steps.filter((step, i) => step !== steps[i - 1]).join(" = ");
}

/** One of two arguments that are given together or not at all; without them both count as 1. */
export function together(name: string, cell: unknown, reader: Reader, partner: string, partnerCell: unknown): BoundNumber {
  const bound = single(name, cell, reader, none);
  return like(bound, {
    read: () =>
      isEmpty(held(cell)) && !isEmpty(held(partnerCell))
        ? fail({ kind: "awaited", name, needs: `it goes with ${partner}; give both or neither` })
        : bound.read(),
  });
}

/** An input that an argument read elsewhere gives along with its own. */
export const alongWith = <Read>(bound: Bound<Read>): Bound<Read> => new Along(bound);

class Along<Read> implements Bound<Read> {
  readonly notes: readonly ArgumentNote[] = NONE;
  constructor(private readonly bound: Bound<Read>) {}
  read = (): Read => this.bound.read();
  native = (): Piece | null => this.bound.native();
  words = (): null => null;
}
const NONE: readonly ArgumentNote[] = [];

/** 1 where the decimals ask for half-even rounding, else 0; the working's rounding line says it in words. */
export const roundsToEven = (name: string, decimals: unknown): BoundNumber => alongWith(single(name, decimals, halfEvenReader, nothing));

/** 1 where an argument that may be left out was given, else 0. */
export function wasGiven(cell: unknown): BoundNumber {
  const is = (): Ratio => (isEmpty(held(cell)) ? zero : one);
  return {
    notes: [],
    read: is,
    native: () =>
      cell instanceof Reference ? whole(`IF(${cell.text}="",0,1)`) : number(is()),
    words: () => null,
  };
}
