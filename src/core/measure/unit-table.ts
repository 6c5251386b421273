import { fail, quoted } from "../fault";
import type { Ratio } from "../expression/ratio";

export interface Unit {
  readonly symbol: string;
  /** Base units (grams, litres) in one of it. */
  readonly size: Ratio;
}

interface Ambiguity {
  readonly spellings: readonly string[];
  readonly because: string;
  readonly write: string;
}

/** The units of one kind, found by any usual spelling. Nothing is guessed: a spelling that means two things is refused. */
export class UnitTable {
  readonly units: readonly Unit[];
  readonly symbols: readonly string[];
  /** What a text that names one of them must be. */
  readonly wants: string;
  private readonly bySpelling = new Map<string, Unit>();

  constructor(
    units: Readonly<Record<string, { readonly size: Ratio; readonly spellings: readonly string[] }>>,
    private readonly ambiguous?: Ambiguity,
  ) {
    this.units = Object.entries(units).map(([symbol, { size, spellings }]) => {
      const unit = { symbol, size };
      for (const spelling of spellings) this.bySpelling.set(spelling, unit);
      return unit;
    });
    this.symbols = Object.keys(units);
    this.wants = `one of ${this.symbols.join(", ")}`;
  }

  lookUp(text: string): Unit | undefined {
    return this.bySpelling.get(spelled(text));
  }

  /** `name` is the argument that the text was given for; `form` says how else it could be written. */
  find(text: string, name: string, form?: string): Unit {
    const unit = this.lookUp(text);
    if (unit) return unit;
    if (this.ambiguous?.spellings.includes(spelled(text)))
      return fail({ kind: "ambiguous", name, got: quoted(text), because: this.ambiguous.because, write: this.ambiguous.write });
    return fail({ kind: "unknown-name", name, got: quoted(text), known: this.symbols, ...(form ? { form } : {}) });
  }
}

const LONGEST = 40;
const spelled = (text: string): string => (text.length > LONGEST ? "" : text.replace(/\s/g, "").toLowerCase());
