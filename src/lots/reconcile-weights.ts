import type { FieldId } from "./fields";
import type { ListedLot } from "./listed-lot";
import { type LotFacts, type PlausibilityRemark, plausibility } from "./plausible";
import { type Compared, agrees } from "./reconcile-agreement";
import { type Contradiction, about, short } from "./reconcile-contradiction";
import { computed, fineFromNet, fineOf, grossLessTare, inUnit, netOf } from "./reconcile-settlement";

/** With how many decimals the columns are written. */
export type Decimals = (field: FieldId) => number;

/** Weights of a row that cannot be, whatever the other rows say. */
export function impossibleWeights(lot: ListedLot): readonly Contradiction[] {
  const [gross, tare, net, fine] = (["gross", "tare", "net", "fineWeight"] as const).map((field) => lot.weight(field) ?? undefined);
  const charged = fineOf(lot) ?? undefined;
  const outturn = lot.weight("outturn") ?? undefined;
  const negative = (["gross", "tare", "net", "fineWeight", "outturn"] as const).flatMap((field) => {
    const [held, cell] = [lot.weight(field), lot.cell(field)];
    return held && cell && held.value < 0 ? [{ kind: field === "outturn" ? "outturn" : "weight", ...about(lot, cell), sentence: `${short(held.value)} ${held.unit} is below zero` } as const] : [];
  });
  const isLessThanTare = gross && tare && (inUnit(tare, gross.unit) ?? 0) > gross.value;
  return [
    ...negative,
    ...said(lot, "weight", "net", { ...given("gross", gross), ...given("net", net) }),
    ...(isLessThanTare ? said(lot, "weight", "tare", { ...given("gross", gross), ...given("tare", tare) }) : []),
    ...said(lot, "weight", "fineWeight", { ...given("net", net ?? gross), ...given("fineWeight", fine) }),
    ...said(lot, "outturn", "outturn", { ...given("fineWeight", charged), ...given("outturn", outturn) }).filter(({ cell }) => cell === lot.cell("outturn")?.address),
  ];
}

const given = <K extends keyof LotFacts>(name: K, fact: LotFacts[K] | undefined): LotFacts => (fact === undefined ? {} : { [name]: fact });

/** What plausibility says of these facts and no others. */
function said(lot: ListedLot, kind: Contradiction["kind"], field: FieldId, facts: LotFacts): readonly Contradiction[] {
  const cell = lot.cell(field);
  if (!cell) return [];
  return plausibility(facts, NOBODY).map(({ sentence }: PlausibilityRemark) => ({ kind, ...about(lot, cell), sentence }));
}

const NOBODY = { today: { year: 9999, month: 12, day: 31 }, lots: [], prices: [] } as const;

/** Net weight against gross and tare, unless one of them is above the gross, which says it already. */
export function comparedNet(lot: ListedLot, places: Decimals): Compared | null {
  const [cell, net, gross, tare] = [lot.cell("net"), lot.weight("net"), lot.weight("gross"), lot.weight("tare")];
  const rest = grossLessTare(lot);
  if (!cell || !net || !gross || !rest || (!tare && lot.cell("tare") !== null && lot.value("tare") !== null)) return null;
  const shouldBe = inUnit(rest, net.unit);
  if (shouldBe === null || shouldBe < 0 || (inUnit(gross, net.unit) ?? 0) < net.value) return null;
  return {
    kind: "weight",
    what: "net weights",
    ...about(lot, cell),
    agrees: agrees(net.value, shouldBe, places("net")),
    sentence: tare ? `Gross less tare is ${short(shouldBe)} ${net.unit}, and net says ${short(net.value)} ${net.unit}` : `Gross is ${short(shouldBe)} ${net.unit} and there is no tare, yet net says ${short(net.value)} ${net.unit}`,
  };
}

/** A factor typed to four or five digits is no contradiction. */
const FACTOR = 5e-4;

/** Fine weight against the goods and their fineness, unless it is above the goods, which says it already. */
export function comparedFine(lot: ListedLot, places: Decimals): Compared | null {
  const [cell, fine, from] = [lot.cell("fineWeight"), lot.weight("fineWeight"), fineFromNet(lot)];
  if (!cell || !fine || !from) return null;
  const [shouldBe, goods] = [inUnit(from, fine.unit), netOf(lot)];
  if (shouldBe === null || (goods && (inUnit(goods, fine.unit) ?? Infinity) < fine.value)) return null;
  return {
    kind: "weight",
    what: "fine weights",
    ...about(lot, cell),
    agrees: agrees(fine.value, shouldBe, places("fineWeight"), FACTOR),
    sentence: `The goods at this fineness hold ${short(shouldBe)} ${fine.unit}, and fine weight says ${short(fine.value)} ${fine.unit}`,
  };
}

export function comparedRecovery(lot: ListedLot, places: Decimals): Compared | null {
  const [cell, held] = [lot.cell("recovery"), lot.value("recovery")];
  const [outturn, fine] = [lot.weight("outturn"), fineOf(lot)];
  if (!cell || typeof held !== "number" || !outturn || !fine) return null;
  const out = inUnit(outturn, fine.unit);
  const share = out === null ? null : computed("RECOVERY", out, fine.value);
  if (share === null) return null;
  const isPercent = cell.match.unit?.symbol === "%";
  const shouldBe = isPercent ? share * 100 : share;
  const text = (value: number): string => `${short(isPercent ? value : value * 100)} %`;
  return { kind: "recovery", what: "recoveries", ...about(lot, cell), agrees: agrees(held, shouldBe, places("recovery"), FACTOR), sentence: `Outturn over fine weight is ${text(shouldBe)}, and recovery says ${text(held)}` };
}
