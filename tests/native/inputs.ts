import {
  type Writer,
  decimals,
  fineness,
  massUnit,
  money,
  perhaps,
  price,
  range,
  share,
  thousandth,
  volume,
  volumeUnit,
  weight,
  writtenFineness,
} from "./written-forms";

/** How to make valid arguments for a function, and how its twin may differ from it. */
export interface TwinInputs {
  readonly make: (w: Writer) => readonly unknown[];
  /** To how many decimals a cell of the result is money, which must agree to its last place; null where it is no money. */
  readonly money?: (cells: readonly unknown[], row: number) => number | null;
}

const cents = (): number => 2;
const placesOf = (cell: unknown): number => (cell === null ? 2 : Number(String(cell).slice(0, 1)));

/** Rows of a settlement that hold money, and of a quote. */
const SETTLEMENT_MONEY = { first: 5, decimals: 9 };
const QUOTE_MONEY = { first: 3 };

/** A gap of at least five thousandths on both sides, so that the twin's float64 difference keeps twelve digits. */
const GAP = 5;

export const inputs: Readonly<Record<string, TwinInputs>> = {
  WEIGHT: { make: (w) => [weight(w), massUnit(w), massUnit(w)] },
  VOLUME: { make: (w) => [volume(w), volumeUnit(w), volumeUnit(w)] },
  FINENESS: { make: (w) => [fineness(w), perhaps(w, () => w.r.pick(["ppt", "%", "fraction", "karat"]))] },
  STANDARD: { make: (w) => [w.r.pick(["sterling", "coin", "Britannia", "fine silver", "gold 585", "platinum 950"])] },
  FINEWEIGHT: { make: (w) => [weight(w), massUnit(w), fineness(w), perhaps(w, () => massUnit(w))] },
  GROSSWEIGHT: { make: (w) => [weight(w), massUnit(w), fineness(w), perhaps(w, () => massUnit(w))] },
  MELTFINENESS: {
    make: (w) => {
      const weights = withGaps(w, () => weight(w));
      return [weights, likeGaps(weights, () => writtenFineness(w, w.r.decimal(100, 999.9, 1)))];
    },
  },
  ALLOYADD: {
    make: (w) => {
      const low = w.r.decimal(0, 900, 1);
      const high = w.r.decimal(low + 3 * GAP, 1000, 1);
      const target = w.r.decimal(low + GAP, high - GAP, 1);
      const [from, added] = w.r.chance(0.6) ? [high, low] : [low, high];
      const addsNone = added === 0 && w.r.chance(0.5);
      return [weight(w), massUnit(w), writtenFineness(w, from), writtenFineness(w, target), addsNone ? null : writtenFineness(w, added)];
    },
  },
  INQUART: {
    make: (w) => {
      const target = w.r.chance(0.5) ? 250 : w.r.decimal(150, 400, 0);
      const given = target === 250 && w.r.chance(0.7) ? null : writtenFineness(w, target);
      return [weight(w), massUnit(w), writtenFineness(w, w.r.decimal(target + GAP, 999, 1)), given, perhaps(w, () => strength(w))];
    },
  },
  FINEU: {
    make: (w) => {
      const { written, difference } = withDifference(w, w.r.decimal(300, 999, 1), w.r.decimal(0, 5, 2));
      return [weight(w), w.r.decimal(0, 2, 3), massUnit(w), written, difference, perhaps(w, () => w.r.pick([1, 2, 3])), perhaps(w, () => massUnit(w))];
    },
  },
  AGREEDASSAY: {
    make: (w) => {
      const ours = w.r.decimal(800, 990, 1);
      const theirs = tenth(ours + w.r.decimal(-5, 5, 1));
      const apart = tenth(Math.abs(ours - theirs));
      const limit = w.r.pick([apart, tenth(apart + 0.1), Math.max(0, tenth(apart - 0.1)), w.r.decimal(0, 5, 1)]);
      const { written, difference } = withDifference(w, ours, limit);
      const umpire = apart > limit || w.r.chance(0.5) ? writtenFineness(w, w.r.decimal(795, 999, 1)) : null;
      return [written, writtenFineness(w, theirs), difference, umpire];
    },
  },
  ASSAYFINE: {
    make: (w) => {
      const sample = w.r.decimal(0.2, 2, 4);
      const found = w.r.chance(0.1) ? sample : w.r.decimal(0.05, sample * 0.95, 4);
      const taken = w.r.decimal(0.2, 1, 4);
      const proof = found < sample * 0.94 && w.r.chance(0.5);
      return [sample, found, proof ? taken : null, proof ? w.r.decimal(taken * 0.98, taken, 4) : null];
    },
  },
  SAMPLEU: {
    make: (w) => [
      readings(w, assays(w), w.r.whole(2, 6)),
      perhaps(w, () => w.r.pick([1, 2, 3])),
    ],
  },
  ACIDMOLARITY: { make: (w) => [strength(w)] },
  NITRIC: {
    make: (w) => [
      weight(w), massUnit(w), fineness(w), perhaps(w, () => strength(w)), perhaps(w, () => share(w)), perhaps(w, () => share(w, 0, 60)), perhaps(w, () => volumeUnit(w)),
    ],
  },
  FUME: { make: (w) => [weight(w), massUnit(w), fineness(w), perhaps(w, () => share(w))] },
  DILUTIONAIR: {
    make: (w) => [
      w.r.decimal(0.1, 60, 2), w.r.decimal(0.25, 24, 2), w.r.pick([1, 3, 5, 25]), perhaps(w, () => w.r.decimal(1, 10, 1)), perhaps(w, () => w.r.pick(["cfm", "m3/h", "L/min", "L/s"])),
    ],
  },
  SILVERLOAD: { make: (w) => [weight(w), massUnit(w), volume(w), volumeUnit(w)] },
  VESSELS: { make: (w) => [...quotient(w, volumeUnit), perhaps(w, () => share(w, 10, 100))] },
  COPPER: { make: (w) => [weight(w), massUnit(w), perhaps(w, () => share(w, 0, 150)), perhaps(w, () => w.r.decimal(0, 20, 2)), perhaps(w, () => massUnit(w))] },
  SILVERDROPPED: {
    make: (w) => [weight(w), massUnit(w), perhaps(w, () => w.r.decimal(0, 5, 2)), perhaps(w, () => massUnit(w))],
  },
  COPPERBARS: { make: (w) => [...quotient(w, massUnit), perhaps(w, () => share(w, 0, 60))] },
  DROPRATE: {
    make: (w) => {
      const hours = readings(w, counter(() => w.r.decimal(0.5, 6, 2)), w.r.whole(2, 5));
      return [hours, likeGaps(hours, () => w.r.decimal(0.05, 80, 2))];
    },
  },
  DROPHOURS: {
    make: (w) => {
      const start = w.r.decimal(1, 200, 1);
      return [start, Math.min(w.r.decimal(0.001, 5, 3), Number((start * 0.9).toFixed(3))), w.r.decimal(0.01, 2, 3)];
    },
  },
  DROPPED: { make: (w) => [w.r.decimal(0.5, 72, 1), w.r.decimal(0.02, 2, 3)] },
  SILVERLEFT: { make: (w) => [w.r.decimal(0.0001, 0.1, 4)] },
  SALT: { make: (w) => [weight(w), massUnit(w), perhaps(w, () => share(w, 0, 120)), perhaps(w, () => massUnit(w))] },
  CHLORIDESILVER: { make: (w) => [weight(w), massUnit(w), perhaps(w, () => massUnit(w))] },
  SILVERFROMCHLORIDE: {
    make: (w) => [weight(w), massUnit(w), perhaps(w, () => w.r.pick(["zinc", "iron", "glucose"])), perhaps(w, () => share(w, 0, 120)), perhaps(w, () => massUnit(w))],
  },
  GOLDDROP: {
    make: (w) => [
      weight(w), massUnit(w), w.r.pick(["sodium metabisulfite", "ferrous sulfate heptahydrate", "sulfur dioxide", "oxalic acid", "oxalic acid dihydrate"]), perhaps(w, () => share(w, 0, 120)), perhaps(w, () => massUnit(w)),
    ],
  },
  DROPPLAN: { make: (w) => [w.r.decimal(45000, 47000, 3), w.r.whole(0, 72), w.r.decimal(0, 48, 1)] },
  RINSED: { make: (w) => [w.r.decimal(0.5, 90, 1), volume(w), volume(w), w.r.whole(0, 12)] },
  RINSES: {
    make: (w) => {
      const [start, retained, rinse] = [w.r.decimal(5, 90, 1), volume(w), volume(w)];
      // Halved, tenthed: targets that are met exactly.
      return w.r.chance(0.3)
        ? [w.r.whole(1, 9) * 10 ** w.r.whole(1, 4), w.r.whole(1, 9) * 0.01, 5, w.r.pick([5, 45])]
        : [start, w.r.decimal(0.001, 1, 3), retained, rinse];
    },
  },
  SPENTCOPPER: { make: (w) => [weight(w), massUnit(w), weight(w), massUnit(w), volume(w), volumeUnit(w)] },
  IRON: { make: (w) => [weight(w), massUnit(w), perhaps(w, () => share(w, 0, 120)), perhaps(w, () => massUnit(w))] },
  SODA: { make: (w) => [w.r.decimal(0.1, 90, 2), perhaps(w, () => w.r.pick(["Na2CO3", "NaOH"])), perhaps(w, () => massUnit(w))] },
  HEATS: { make: (w) => [...quotient(w, massUnit), perhaps(w, () => share(w, 40, 100))] },
  BARS: { make: (w) => quotient(w, massUnit) },
  CELLHOURS: { make: (w) => [weight(w), massUnit(w), w.r.decimal(1, 400, 1), perhaps(w, () => share(w, 50, 100))] },
  CELLENERGY: { make: (w) => [weight(w), massUnit(w), w.r.decimal(1, 4, 2), perhaps(w, () => share(w, 50, 100))] },
  CELLDRAW: { make: (w) => [weight(w), massUnit(w), writtenFineness(w, w.r.decimal(900, 999, 1)), perhaps(w, () => massUnit(w))] },
  PRICE: { make: (w) => [price(w), massUnit(w), massUnit(w)] },
  WEARCOST: { make: (w) => [money(w), w.r.whole(1, 60), w.r.decimal(0, 5, 1)] },
  LOTCOST: {
    make: (w) => {
      const quantities = withGaps(w, () => w.r.pick([w.r.whole(0, 40), w.r.decimal(0, 20, 1), w.r.decimal(0, 9, 3)]));
      return [quantities, likeGaps(quantities, () => w.r.pick([money(w), w.r.decimal(-20, 20, 2), w.r.decimal(0, 5, 3)]))];
    },
    money: cents,
  },
  RECOVERY: { make: (w) => [weight(w), weight(w)] },
  RECOVERYU: { make: (w) => [weight(w), w.r.decimal(0, 2, 3), weight(w), w.r.decimal(0, 2, 3), perhaps(w, () => w.r.pick([1, 2, 3]))] },
  UNACCOUNTED: { make: (w) => [weights(w), weights(w), weights(w), weights(w)] },
  BALANCE: {
    make: (w) => {
      const met = w.r.chance(0.3);
      const [opening, received, shipped] = [w.r.decimal(0, 900, 2), w.r.decimal(1, 900, 2), w.r.decimal(0, 800, 2)];
      const gap = w.r.decimal(-3, 3, 1);
      const closing = Math.max(0, Number((opening + received - shipped - gap).toFixed(2)));
      // A gap that is just k times the one uncertainty there is.
      const single = Number((Math.abs(gap) / 2).toFixed(3));
      const us = met ? [single, 0, 0, 0] : Array.from({ length: 4 }, () => w.r.decimal(0, 1.5, 2));
      return [opening, received, shipped, closing, ...us, met ? null : perhaps(w, () => share(w, 0, 1)), met ? null : perhaps(w, () => w.r.pick([1, 2, 3]))];
    },
  },
  HELDBACK: {
    make: (w) => [w.r.decimal(100, 900, 2), w.r.decimal(50, 900, 2), w.r.decimal(0, 3, 3), w.r.decimal(0, 9, 2), w.r.decimal(0, 9, 2), w.r.decimal(0, 800, 2)],
  },
  PAYOUT: {
    make: (w) => [
      w.r.pick([() => weight(w), () => w.r.whole(1, 4000) / 4])(),
      w.r.chance(0.6) ? "ozt" : massUnit(w),
      price(w),
      perhaps(w, () => w.r.pick([0.975, 0.98, 0.5, share(w, 80, 100)])),
      perhaps(w, () => w.r.decimal(0, 2, 2)),
      perhaps(w, () => money(w)),
      decimals(w),
    ],
    money: (cells) => placesOf(cells[6]),
  },
  SETTLEMENT: {
    make: (w) => [
      weight(w),
      massUnit(w),
      fineness(w),
      price(w),
      share(w, 80, 100),
      w.r.decimal(0, 2, 2),
      w.r.decimal(0, 1, 3),
      money(w),
      perhaps(w, () => w.r.pick<number | string>(w.plain ? [0, 1, 5, 0.5] : [0, 1, 5, 0.5, "5‰", "0.5%"])),
      decimals(w),
    ],
    money: (cells, row) => (row >= SETTLEMENT_MONEY.first ? placesOf(cells[SETTLEMENT_MONEY.decimals]) : null),
  },
  METALRETURN: {
    make: (w) => {
      const charged = w.r.chance(0.5);
      const [fine, at] = [w.r.pick([w.r.decimal(20, 900, 3), w.r.whole(20, 900)]), price(w)];
      return [fine, "ozt", share(w, 60, 100), charged ? money(w) / 2 : w.r.pick([0, null]), charged ? at : perhaps(w, () => at), perhaps(w, () => massUnit(w))];
    },
  },
  QUOTE: {
    make: (w) => {
      const finenesses = [w.r.decimal(500, 999, 1), w.r.decimal(500, 999, 1), w.r.decimal(500, 999, 1)].sort((a, b) => a - b);
      if (w.r.chance(0.2)) finenesses[1] = finenesses[0] ?? 0;
      return [
        weight(w), massUnit(w), ...finenesses.map((ppt) => writtenFineness(w, ppt)), price(w), share(w, 80, 100), w.r.decimal(0, 2, 2), money(w), perhaps(w, () => share(w, 0, 30)),
      ];
    },
    money: (_, row) => (row >= QUOTE_MONEY.first ? 2 : null),
  },
  MARGIN: {
    make: (w) => [weight(w), massUnit(w), price(w), w.r.decimal(-50, 5000, 2), money(w)],
    money: cents,
  },
  BREAKEVEN: {
    make: (w) => [w.r.decimal(20, 900, 2), "ozt", price(w), w.r.decimal(0, 200, 2), perhaps(w, () => w.r.decimal(0, 2, 2)), perhaps(w, () => w.r.decimal(0, 90, 2))],
  },
};

const tenth = (x: number): number => Number(x.toFixed(1));

/** A fineness with a difference of fineness beside it: on its scale, or as a text with its own. */
function withDifference(w: Writer, ppt: number, difference: number) {
  const written = writtenFineness(w, ppt);
  if (typeof written === "number") {
    if (!w.plain && w.r.chance(0.2)) return { written, difference: `${difference}‰` };
    return { written, difference: written <= 1 ? thousandth(difference) : difference };
  }
  return { written, difference: w.r.pick([`${difference}‰`, `${thousandth(difference * 100)}%`]) };
}

const strength = (w: Writer): number | string => w.r.pick([() => share(w, 5, 70), () => w.r.pick([0.05, 0.1, 0.24, 0.4, 0.68, 0.7])])();

/** Two amounts of which one is shared out by the other; now and then it goes without a rest. */
function quotient(w: Writer, unit: (w: Writer) => string): readonly unknown[] {
  const one = unit(w);
  if (w.r.chance(0.6)) return [w.r.decimal(1, 300, 2), one, w.r.decimal(0.5, 12, 2), one];
  const each = w.r.decimal(0.1, 12, w.r.whole(1, 3));
  return [Number((each * w.r.whole(1, 40)).toFixed(3)), one, each, one];
}

const weights = (w: Writer): unknown => (w.r.chance(0.3) ? weight(w) : withGaps(w, () => weight(w)));

type Rows<T> = readonly (readonly T[])[];

/** A range that, now and then, ends in an empty row. */
function withGaps<T>(w: Writer, make: () => T, rows?: number): Rows<T | null> {
  const full = range(w, make, rows === undefined ? {} : { rows });
  return w.r.chance(0.25) ? [...full, full[0]?.map(() => null) ?? []] : full;
}

/** Assays that are written in many ways, or all as numbers. */
function assays(w: Writer): () => number | string {
  const writer = w.r.chance(0.5) ? w : { ...w, plain: true };
  return () => writtenFineness(writer, w.r.decimal(850, 999, 1));
}

/** Readings that are counted: an empty row among them is no plain way to write them. */
const readings = <T>(w: Writer, make: () => T, rows: number): Rows<T | null> =>
  w.plain ? range(w, make, { rows }) : withGaps(w, make, rows);

/** A second range of the same shape, empty where the first is. */
const likeGaps = <T>(first: readonly (readonly unknown[])[], make: () => T): readonly (readonly (T | null)[])[] =>
  first.map((row) => row.map((cell) => (cell === null ? null : make())));

/** Numbers that grow from one to the next. */
function counter(step: () => number): () => number {
  let at = 0;
  return () => {
    const now = at;
    at = Number((at + step()).toFixed(2));
    return now;
  };
}
