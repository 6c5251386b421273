import { type Random, random } from "../random";
import { value } from "./ours";

/** A row of a class: whole numbers, so that what it comes to can be computed in whole numbers. */
type Ticks = Readonly<Record<string, number>>;

interface Class<T extends Ticks> {
  readonly name: string;
  draw(r: Random): T;
  /** Over and under of the exact result, in the smallest unit that is paid or weighed: cents, or thousandths of an ounce. */
  exactly(row: T): readonly (readonly [over: bigint, under: bigint])[];
  ours(rows: readonly T[]): readonly (readonly number[])[];
  /** The same as a formula in float64 gives it; `ounces` in a pound where there is one. */
  plainly(row: T, ounces: number): readonly number[];
  /** 100 for cents, 1000 for thousandths. */
  readonly parts: number;
  readonly inPounds?: true;
}

export interface Counted {
  readonly name: string;
  readonly rows: number;
  readonly ties: number;
  readonly ours: number;
  readonly plain: number;
  /** Null where no pound is in it. */
  readonly typed: number | null;
}

const ROWS = 1_000_000;
const AT_ONCE = 50_000;
const SEED = 20261125;
const EXACT_POUND = 175 / 12;
const TYPED_POUND = 14.5833;

const big = BigInt;
const column = <T>(rows: readonly T[], of: (row: T) => unknown): unknown[][] => rows.map((row) => [of(row)]);
const payouts = (...cells: readonly unknown[]): readonly (readonly number[])[] => value("PAYOUTS", ...cells) as number[][];
/** Rounded half away from zero, as one would write it in float64. */
const near = (x: number, parts: number): number => (Math.sign(x) * Math.floor(Math.abs(x) * parts + 0.5)) / parts;
const class_ = <T extends Ticks>(one: Class<T>): Class<Ticks> => one as unknown as Class<Ticks>;

/** Whole and quarter ounces, in thousandths. */
const ounces = (r: Random): number => r.pick([() => r.whole(1, 900) * 1000, () => r.whole(1, 3600) * 250, () => r.whole(1, 9000) * 100, () => r.whole(1, 900_000)])();
/** A price in thousandths, many a one with half a cent. */
const price = (r: Random): number => r.pick([() => r.whole(3600, 9000) * 5, () => r.whole(360, 900) * 50, () => r.whole(18, 45) * 1000])();
const GRADES = [9000, 9250, 8000, 8350, 9580, 9990] as const;

const CLASSES: readonly Class<Ticks>[] = [
  class_({
    name: "weights in ozt",
    draw: (r) => ({ fine: ounces(r), price: price(r) }),
    exactly: ({ fine, price }) => [[big(fine) * big(price), 10_000n]],
    ours: (rows) => payouts(column(rows, ({ fine }) => fine / 1000), "ozt", column(rows, ({ price }) => price / 1000)),
    plainly: ({ fine, price }) => [near((fine / 1000) * (price / 1000), 100)],
    parts: 100,
  }),
  class_({
    name: "pounds, by 175/12",
    draw: (r) => ({ fine: r.pick([() => r.whole(1, 4000) * 12, () => r.whole(1, 400) * 60, () => r.whole(1, 40_000)])(), price: price(r) }),
    exactly: ({ fine, price }) => [[big(fine) * 175n * big(price), 120_000n]],
    ours: (rows) => payouts(column(rows, ({ fine }) => fine / 1000), "lb", column(rows, ({ price }) => price / 1000)),
    plainly: ({ fine, price }, ounces) => [near((fine / 1000) * ounces * (price / 1000), 100)],
    parts: 100,
    inPounds: true,
  }),
  class_({
    name: "fine × charge",
    draw: (r) => ({ fine: ounces(r), charge: r.pick([() => r.whole(1, 40) * 25, () => r.whole(1, 200) * 5])() }),
    exactly: ({ fine, charge }) => [[big(fine) * big(charge), 10_000n]],
    ours: (rows) => payouts(column(rows, ({ fine }) => fine / 1000), "ozt", column(rows, ({ charge }) => charge / 1000)),
    plainly: ({ fine, charge }) => [near((fine / 1000) * (charge / 1000), 100)],
    parts: 100,
  }),
  class_({
    name: "percent fees",
    draw: (r) => ({ cents: r.pick([() => r.whole(1, 5000) * 100, () => r.whole(1, 500_000)])(), permille: r.whole(1, 60) * 5 }),
    exactly: ({ cents, permille }) => [[big(cents) * big(permille), 1000n]],
    ours: (rows) => payouts(column(rows, ({ cents }) => cents / 100), "ozt", 1, column(rows, ({ permille }) => `${permille / 10}%`)),
    plainly: ({ cents, permille }) => [near((cents / 100) * (permille / 1000), 100)],
    parts: 100,
  }),
  class_({
    name: "fine × payable × price",
    draw: (r) => ({ fine: ounces(r), payable: r.pick([975, 980, 985, 990]), price: price(r) }),
    exactly: ({ fine, payable, price }) => [[big(fine) * big(payable) * big(price), 10_000_000n]],
    ours: (rows) => payouts(column(rows, ({ fine }) => fine / 1000), "ozt", column(rows, ({ price }) => price / 1000), column(rows, ({ payable }) => payable / 1000)),
    plainly: ({ fine, payable, price }) => [near((fine / 1000) * (payable / 1000) * (price / 1000), 100)],
    parts: 100,
  }),
  class_({
    name: "fine weight to three places",
    draw: (r) => ({ weight: ounces(r), grade: r.pick(GRADES) }),
    exactly: ({ weight, grade }) => [[big(weight) * big(grade), 10_000n]],
    ours: (rows) => payouts(column(rows, ({ weight }) => weight / 1000), "ozt", column(rows, ({ grade }) => grade / 10_000), null, null, null, 3),
    plainly: ({ weight, grade }) => [near((weight / 1000) * (grade / 10_000), 1000)],
    parts: 1000,
  }),
  class_({
    name: "half-price advance",
    draw: (r) => ({ fine: ounces(r), price: price(r) }),
    exactly: ({ fine, price }) => [[big(fine) * big(price), 20_000n]],
    ours: (rows) => payouts(column(rows, ({ fine }) => fine / 1000), "ozt", column(rows, ({ price }) => price / 1000), 0.5),
    plainly: ({ fine, price }) => [near((fine / 1000) * 0.5 * (price / 1000), 100)],
    parts: 100,
  }),
  class_({
    name: "amount × payable",
    draw: (r) => ({ cents: r.whole(1, 2_000_000), payable: r.pick([975, 980, 985, 995]) }),
    exactly: ({ cents, payable }) => [[big(cents) * big(payable), 1000n]],
    ours: (rows) => payouts(column(rows, ({ cents }) => cents / 100), "ozt", 1, column(rows, ({ payable }) => payable / 1000)),
    plainly: ({ cents, payable }) => [near((cents / 100) * (payable / 1000), 100)],
    parts: 100,
  }),
  class_({
    name: "a chain of rounded lines",
    draw: (r) => ({ net: ounces(r), grade: r.pick(GRADES), payable: r.pick([975, 980]), price: price(r), refining: r.pick([500, 350, 125]), treatment: r.pick([100, 50, 25]) }),
    exactly({ net, grade, payable, price, refining, treatment }) {
      const payableFine = big(net) * big(grade) * big(payable);
      const money = 100_000_000_000n;
      const [metal, refined, treated] = [payableFine * big(price), payableFine * big(refining), big(net) * big(treatment) * 10_000_000n];
      return [[metal, money], [-refined, money], [-treated, money], [metal - refined - treated, money]];
    },
    ours: (rows) =>
      rows.map(({ net, grade, payable, price, refining, treatment }) => {
        const lines = value("SETTLEMENT", net / 1000, "ozt", grade / 10_000, price / 1000, payable / 1000, refining / 1000, treatment / 1000, 0) as unknown[][];
        return ["Metal value", "Refining charge", "Treatment charge", "Payout"].map((name) => lines.find(([label]) => label === name)?.[1] as number);
      }),
    plainly({ net, grade, payable, price, refining, treatment }) {
      const payableFine = (net / 1000) * (grade / 10_000) * (payable / 1000);
      const [metal, refined, treated] = [payableFine * (price / 1000), payableFine * (refining / 1000), (net / 1000) * (treatment / 1000)];
      return [metal, -refined, -treated, metal - refined - treated].map((money) => near(money, 100));
    },
    parts: 100,
  }),
  class_({
    name: "standard grades, half-cent prices",
    draw: (r) => ({ weight: ounces(r), grade: r.pick(GRADES), price: r.whole(3600, 9000) * 5 }),
    exactly: ({ weight, grade, price }) => [[big(weight) * big(grade) * big(price), 100_000_000n]],
    ours(rows) {
      const fine = value("FINEWEIGHTS", column(rows, ({ weight }) => weight / 1000), "ozt", column(rows, ({ grade }) => grade / 10));
      return payouts(fine, "ozt", column(rows, ({ price }) => price / 1000));
    },
    plainly: ({ weight, grade, price }) => [near((weight / 1000) * (grade / 10_000) * (price / 1000), 100)],
    parts: 100,
  }),
];

/** Rows of each class whose cents, or thousandths of an ounce, are not the exact ones. */
export const cents = (): readonly Counted[] => CLASSES.map(count);

function count(one: Class<Ticks>): Counted {
  const r = random(SEED);
  const wrong = { ours: 0, plain: 0, typed: 0 };
  let ties = 0;
  for (let start = 0; start < ROWS; start += AT_ONCE) {
    const rows = Array.from({ length: AT_ONCE }, () => one.draw(r));
    const ours = one.ours(rows);
    rows.forEach((row, i) => {
      const exact = one.exactly(row).map(([over, under]) => halfAway(over, under));
      if (exact.some(({ isTie }) => isTie)) ties++;
      // Half a cent below zero is no cent at all: -0 is 0 in a cell.
      const differs = (cells: readonly number[] | undefined): boolean => exact.some(({ whole }, j) => cells?.[j] !== Number(whole) / one.parts + 0 && !(cells?.[j] === 0 && whole === 0n));
      if (differs(ours[i])) wrong.ours++;
      if (differs(one.plainly(row, EXACT_POUND))) wrong.plain++;
      if (one.inPounds && differs(one.plainly(row, TYPED_POUND))) wrong.typed++;
    });
  }
  return { name: one.name, rows: ROWS, ties, ours: wrong.ours, plain: wrong.plain, typed: one.inPounds ? wrong.typed : null };
}

/** The quotient of whole numbers to the nearest whole number, a half away from zero. */
function halfAway(over: bigint, under: bigint): { whole: bigint; isTie: boolean } {
  const [size, sign] = over < 0n ? [-over, -1n] : [over, 1n];
  const below = size / under;
  const twice = (size - below * under) * 2n;
  return { whole: sign * (twice >= under ? below + 1n : below), isTie: twice === under };
}
