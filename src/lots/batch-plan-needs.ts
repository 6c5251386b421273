import { Reference } from "../functions/reference";
import type { Shop, ShopFieldId } from "./shop";

/** What of a batch is decided for it alone. */
export type ChoiceId = "strongShare" | "water" | "pails" | "freeAcid" | "dropHours" | "start" | "barFineness";

/** What a figure waits for. */
export type Need = { readonly in: "shop"; readonly field: ShopFieldId } | { readonly in: "batch"; readonly choice: ChoiceId };

/** Thrown by a figure that cannot stand yet, and by all that it feeds. */
export class Lacking extends Error {
  constructor(readonly needs: readonly Need[]) {
    super("The plan lacks something");
    this.name = "Lacking";
  }
}

export interface Told {
  readonly cell: Reference;
  readonly unit: string | null;
}

/** What the shop tells of a field, or null. A field that names a cell tells nothing until that cell has been read. */
export function told(shop: Shop, field: ShopFieldId): Told | null {
  const value = shop[field];
  if (!value || !("value" in value) || value.value === "") return null;
  return { cell: new Reference("The shop", value.value), unit: value.unit ?? null };
}

/** What the shop tells of fields that all have to be there. */
export function needed<F extends ShopFieldId>(shop: Shop, ...fields: readonly F[]): Readonly<Record<F, Told>> {
  const found = fields.map((field) => [field, told(shop, field)] as const);
  const absent = found.filter(([, value]) => value === null);
  if (absent.length > 0) throw new Lacking(absent.map(([field]) => ({ in: "shop", field })));
  return Object.fromEntries(found) as Readonly<Record<F, Told>>;
}

/** Parts of one figure, each worked out; where some lack something, all that they lack is named at once. */
export function together<P extends readonly (() => unknown)[]>(...parts: P): { readonly [K in keyof P]: ReturnType<P[K]> } {
  const needs: Need[] = [];
  const results = parts.map((part) => {
    try {
      return part();
    } catch (error) {
      if (!(error instanceof Lacking)) throw error;
      needs.push(...error.needs);
      return undefined;
    }
  });
  if (needs.length > 0) throw new Lacking(needs.filter((need, i) => needs.findIndex((other) => isSame(need, other)) === i));
  return results as { readonly [K in keyof P]: ReturnType<P[K]> };
}

const isSame = (a: Need, b: Need): boolean => (a.in === "shop" ? b.in === "shop" && a.field === b.field : b.in === "batch" && a.choice === b.choice);

const SHOP_WORDS: Readonly<Partial<Record<ShopFieldId, string>>> = {
  acidStrength: "the strength of the acid",
  pail: "the pail",
  fumeHours: "the hours that the fume takes",
  airLimit: "the limit for the air",
  copperBar: "the copper bar",
  dropTarget: "the silver at which a drop is done",
  dropRate: "the rate of a drop",
  settleHours: "the hours to settle",
  retained: "the liquid that a decanting leaves",
  rinse: "the water of a rinse",
  rinseTarget: "the copper to rinse down to",
  crucible: "the crucible",
  mould: "the mould",
  cellAmps: "the current of the cell",
  cellVolts: "the voltage of the cell",
};

const CHOICE_WORDS: Readonly<Partial<Record<ChoiceId, string>>> = {
  water: "the water that is added",
  start: "when the drop starts",
  barFineness: "the fineness of the silver bars",
};

/** The same in words, by where it is told: "the pail and the copper bar"; null where nothing is lacking there. */
export function needsInWords(needs: readonly Need[]): Readonly<Record<Need["in"], string | null>> {
  const of = (where: Need["in"]): string | null => listed(needs.filter((need) => need.in === where).map((need) => (need.in === "shop" ? (SHOP_WORDS[need.field] ?? need.field) : (CHOICE_WORDS[need.choice] ?? need.choice))));
  return { shop: of("shop"), batch: of("batch") };
}

const listed = (items: readonly string[]): string | null => (items.length < 2 ? (items[0] ?? null) : `${items.slice(0, -1).join(", ")} and ${items.at(-1)}`);
