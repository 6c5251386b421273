import type { Fault } from "./fault";
import { type Expression, ONE, ZERO, choose, refuse } from "./expression/expression";
import { type Amount, formula, statement } from "./expression/formula";
import { amount, count, fineness, money, moneyPerTroyOunce, perThousand, share, troyOunces } from "./measure/quantity";

const terms = { price: moneyPerTroyOunce, payable: share, refiningCharge: moneyPerTroyOunce, lotCharges: money } as const;
const rounding = { decimals: count, halfToEven: count } as const;

const DISORDER: Fault = {
  kind: "conflict",
  names: ["low", "likely", "high"],
  because: "they are not in that order",
  write: "write the lowest fineness first and the highest last",
};

export const payout = formula(
  {
    title: "Payout",
    rule: "payable fine weight times price, less refining charge on the payable fine weight, less lot charges; below zero the client owes",
  },
  { fine: troyOunces, ...terms, ...rounding },
  "payout",
  money,
  ({ fine, price, payable, refiningCharge, lotCharges, decimals, halfToEven }) => {
    const payableFine = fine.times(payable).named("payable fine", "ozt");
    return payableFine.times(price.minus(refiningCharge)).minus(lotCharges).round(decimals, halfToEven);
  },
);

export const settlement = statement(
  {
    title: "Settlement",
    rule: "payable fine is the lesser of fine × payable and fine × (1 − deduction ÷ fineness), not below zero; payout is its value less the refining, treatment and lot charges, rounded once; each line is rounded for itself and the rounding line carries what that shifts",
  },
  { net: troyOunces, netAsGiven: amount, fineness, ...terms, treatmentCharge: money, deduction: fineness, ...rounding },
  (s) => {
    const round = (e: Expression): Expression => e.round(s.decimals, s.halfToEven);
    const fine = s.net.times(s.fineness).named("fine weight", "ozt");
    const payableFine = payableFineWeight(fine, s.fineness, s.payable, s.deduction);
    const value = payableFine.times(s.price).named("metal value", "");
    const refining = payableFine.times(s.refiningCharge).named("refining charge in all", "");
    const treatment = s.netAsGiven.times(s.treatmentCharge).named("treatment charge in all", "");
    const total = round(value.minus(refining).minus(treatment).minus(s.lotCharges)).named("payout", "");
    const lines = [
      line("Metal value", round(value)),
      line("Refining charge", round(ZERO.minus(refining))),
      line("Treatment charge", round(ZERO.minus(treatment))),
      line("Lot charges", round(ZERO.minus(s.lotCharges))),
    ];
    const shifted = lines.reduce((rest, { of }) => rest.minus(of), total);
    return [
      ["Net weight", { name: "net weight", quantity: amount, of: s.netAsGiven }, { unitOf: "netAsGiven" }],
      ["Fineness", { name: "fineness", quantity: { unit: "‰" }, of: s.fineness.times(1000) }, "‰"],
      ["Fine weight", { name: "fine weight", quantity: troyOunces, of: fine }, "ozt"],
      ["Payable fine weight", { name: "payable fine weight", quantity: troyOunces, of: payableFine }, "ozt"],
      ["Price", { name: "price", quantity: moneyPerTroyOunce, of: s.price }, "per ozt"],
      ...lines.map((l) => [l.name, l, "money"]),
      ["Rounding", line("Rounding", shifted), "money"],
      ["Payout", line("Payout", total), "money"],
    ];
  },
);

function line(name: string, of: Expression): Amount {
  return { name, quantity: money, of };
}

function payableFineWeight(fine: Expression, fineness: Expression, payable: Expression, deduction: Expression): Expression {
  const share = payable.min(ONE.minus(deduction.over(fineness)));
  return fine.times(share).max(0).named("payable fine", "ozt");
}

const RETURN_STEP = 3;

export const metalReturn = formula(
  {
    title: "Metal to return",
    rule: "payable fine weight less the charges turned into metal at the price, cut to 0.001 ozt",
  },
  { fine: troyOunces, payable: share, charges: money, price: moneyPerTroyOunce, priceGiven: count },
  "fine weight to return",
  troyOunces,
  ({ fine, payable, charges, price, priceGiven }) => {
    const payableFine = fine.times(payable).named("payable fine", "ozt");
    const chargesInMetal = charges.over(price).named("charges in metal", "ozt");
    const left = payableFine.minus(chargesInMetal);
    return choose(
      charges.equals(0),
      payableFine.round(RETURN_STEP, "down"),
      choose(
        priceGiven.equals(0),
        refuse({ kind: "awaited", name: "price", needs: "charges in money need a price to be taken in metal" }),
        choose(
          left.isBelow(0),
          refuse({
            kind: "conflict",
            names: ["charges", "fine"],
            because: "the charges are more than the payable metal is worth",
            write: "settle this lot in money",
          }),
          left.round(RETURN_STEP, "down"),
        ),
      ),
    );
  },
);

export const quote = statement(
  {
    title: "Quote",
    rule: "payout at the low, the likely and the high fineness, with the price down by the swing, as quoted, and up by it; melt and assay decide",
  },
  { weight: troyOunces, low: fineness, likely: fineness, high: fineness, ...terms, swing: share },
  ({ weight, low, likely, high, price, payable, refiningCharge, lotCharges, swing }) => {
    const cases = [low, likely, high].map((f, i) => ({ f, fine: weight.times(f).named(`fine weight, ${["low", "likely", "high"][i]}`, "ozt") }));
    const ordered = (of: Expression): Expression =>
      choose(low.isAtMost(likely), choose(likely.isAtMost(high), of, refuse(DISORDER)), refuse(DISORDER));
    const pay = (fine: Expression, factor: Expression): Expression =>
      ordered(fine.times(payable).times(price.times(factor).minus(refiningCharge)).minus(lotCharges).round(2, "half away from zero"));
    const payRow = (label: string, factor: Expression) => [label, ...cases.map(({ fine }) => line(label, pay(fine, factor)))];
    return [
      ["Quote", "Low", "Likely", "High"],
      ["Fineness, ‰", ...cases.map(({ f }) => ({ name: "fineness", quantity: perThousand, of: f.times(1000) }))],
      ["Fine weight, ozt", ...cases.map(({ fine }) => ({ name: "fine weight", quantity: troyOunces, of: fine }))],
      payRow("Payout, price down", ONE.minus(swing)),
      payRow("Payout, price as quoted", ONE),
      payRow("Payout, price up", ONE.plus(swing)),
    ];
  },
);

const MONEY_PLACES = 2;

export const margin = formula(
  { title: "Margin of a lot", rule: "metal value less payout less costs, rounded once to cents" },
  { fine: troyOunces, price: moneyPerTroyOunce, payout: money, costs: money },
  "margin",
  money,
  ({ fine, price, payout, costs }) =>
    fine.times(price).named("metal value", "").minus(payout).minus(costs).round(MONEY_PLACES, "half away from zero"),
);

export const breakEven = formula(
  {
    title: "Payable share at which the margin is zero",
    rule: "(metal value + lot charges − costs) ÷ (fine weight × (price − refining charge))",
  },
  { fine: troyOunces, price: moneyPerTroyOunce, costs: money, refiningCharge: moneyPerTroyOunce, lotCharges: money },
  "payable share",
  share,
  ({ fine, price, costs, refiningCharge, lotCharges }) =>
    choose(
      price.isAtMost(refiningCharge),
      refuse({
        kind: "conflict",
        names: ["refiningCharge", "price"],
        because: "a refining charge that takes the whole price leaves no payable share to look for",
        write: "give a charge below the price",
      }),
      fine.times(price).named("metal value", "").plus(lotCharges).minus(costs).over(fine.times(price.minus(refiningCharge))),
    ),
);
