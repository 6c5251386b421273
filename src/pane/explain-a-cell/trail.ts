import type { Standing } from "../../explaining/references";

/** The cells from which one went to an input, so that one finds back. */
export class Trail {
  #explained: Standing[] = [];

  /** Another cell is explained: one that the last one reads, or one that has nothing to do with it. */
  moved(from: Standing | null, to: Standing, isInput: boolean): void {
    const back = this.#explained.findIndex((one) => isSamePlace(one, to));
    if (back >= 0) this.#explained = this.#explained.slice(0, back);
    else if (from && isInput) this.#explained.push(from);
    else if (from && !isSamePlace(from, to)) this.#explained = [];
  }

  last(): Standing | null {
    return this.#explained[this.#explained.length - 1] ?? null;
  }
}

export const isSamePlace = (a: Standing, b: Standing): boolean => a.sheet === b.sheet && a.spot.row === b.spot.row && a.spot.column === b.spot.column;
