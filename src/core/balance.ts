import { type Expression, sum } from "./expression/expression";
import { type Amount, type ResultCell, each, formula, statement } from "./expression/formula";
import { amount, count, share } from "./measure/quantity";

const SOURCE = "material unaccounted for: (beginning inventory + receipts) − (removals + ending inventory)";
const terms = { opening: each(amount), received: each(amount), shipped: each(amount), closing: each(amount) } as const;

type Terms = Readonly<Record<keyof typeof terms, Expression>>;
const difference = ({ opening, received, shipped, closing }: Terms): Expression =>
  sum(opening).plus(sum(received)).minus(sum(shipped)).minus(sum(closing));

export const unaccounted = formula(
  {
    title: "Unaccounted metal",
    rule: "opening + received − shipped − closing, all in one unit; above zero metal is missing, below zero there is more than the books say",
    source: SOURCE,
  },
  terms,
  "unaccounted",
  amount,
  difference,
);

export const balance = statement(
  {
    title: "Metal balance",
    rule: "unaccounted = opening + received − shipped − closing; its random uncertainties add in quadrature, the bias that one scale shares acts on the algebraic sum; a gap inside k times the whole is within measurement",
    source: `${SOURCE}; JCGM 100:2008 (GUM), 5.1.2 and 6.2.1`,
  },
  { ...terms, uOpening: amount, uReceived: amount, uShipped: amount, uClosing: amount, bias: share, k: count },
  ({ uOpening, uReceived, uShipped, uClosing, bias, k, ...sides }) => {
    const gap = difference(sides).named("unaccounted", "");
    const random = [uOpening, uReceived, uShipped, uClosing].map((u) => u.power(2)).reduce((a, b) => a.plus(b));
    const shared = bias.times(gap).power(2);
    const expanded = k.times(random.plus(shared).sqrt()).named("expanded uncertainty", "");
    const size = gap.max(gap.times(-1));
    const throughput = sum(sides.received).max(sum(sides.shipped)).named("throughput", "");
    const cell = (name: string, of: Expression): Amount => ({ name, quantity: amount, of });
    return [
      ["Opening", cell("opening", sum(sides.opening))],
      ["Received", cell("received", sum(sides.received))],
      ["Shipped", cell("shipped", sum(sides.shipped))],
      ["Closing", cell("closing", sum(sides.closing))],
      ["Unaccounted", cell("unaccounted", gap)],
      ["Expanded uncertainty", cell("expanded uncertainty", expanded)],
      [
        "Share of throughput",
        { when: throughput.isAtMost(0), then: "no throughput", otherwise: cell("share of throughput", gap.over(throughput)) },
      ],
      [
        "Verdict",
        {
          when: size.isAtMost(expanded),
          then: "within measurement",
          otherwise: { when: gap.isBelow(0), then: "metal over", otherwise: "metal missing" },
        },
      ],
    ];
  },
);

export const heldBack = statement(
  {
    title: "Where the fine metal is",
    rule: "what was charged, line by line: in crystal, in liquor, on stubs, in filter and basket residues, dropped and still in process; the last line is what nobody has found. The lines add up to the charge",
  },
  { charged: amount, dropped: amount, liquor: amount, stubs: amount, residues: amount, crystal: amount },
  ({ charged, dropped, liquor, stubs, residues, crystal }) => {
    const row = (label: string, of: Expression): readonly ResultCell[] => [
      label,
      { name: label, quantity: amount, of },
      { name: `${label}, share of the charge`, quantity: share, of: of.over(charged) },
    ];
    return [
      row("Crystal", crystal),
      row("Left in liquor", liquor),
      row("On stubs", stubs),
      row("Filter and basket residues", residues),
      row("Dropped, still in process", dropped.minus(crystal).minus(stubs).minus(residues)),
      row("Unaccounted", charged.minus(dropped).minus(liquor)),
    ];
  },
);
