import type { BookPort, Change } from "../workbook/port";
import { readSettings, settingsChanges } from "../workbook/settings";
import { readAddress } from "../workbook/xlsx/address";
import type { SheetReading } from "./sheet-reading";
import { shopFields } from "./shop-fields";

/** What is known of the shop, field by field. */
export type ShopFieldId =
  | "name" | "address" | "currency" | "paper" | "quoteNumber" | "statementNumber" | "quoteDays"
  | "payable" | "refiningCharge" | "treatmentCharge" | "lotCharges" | "deduction" | "price" | "priceSwing"
  | "acidStrength" | "acidExcess" | "pail" | "pailFill" | "fumeHours" | "airLimit" | "airSafety"
  | "copperAllowance" | "copperBar" | "copperStub" | "dropStart" | "dropTarget" | "dropRate" | "settleHours" | "saltExcess"
  | "retained" | "rinse" | "rinseTarget"
  | "crucible" | "mould" | "cellAmps" | "cellVolts" | "cellEfficiency"
  | "scale" | "scaleBias" | "assay";

/** What a field holds, which decides how it is asked for and read. */
export type ShopKind = "line" | "lines" | "paper" | "number series" | "days" | "share" | "per thousand" | "per mass" | "money" | "mass" | "volume" | "strength" | "grams per litre" | "per hour" | "hours" | "ppm" | "factor" | "amperes" | "volts";

/** A number or text as the user typed it, in the workbook's own signs, with its unit where it has one; or the cell that holds it. */
export type ShopValue = { readonly value: number | string; readonly unit?: string } | { readonly sheet: string; readonly cell: string; readonly unit?: string };

/** A field that the shop has not told of is absent: nothing is guessed. */
export type Shop = Readonly<Partial<Record<ShopFieldId, ShopValue>>>;

const SHOP_KEY = "shop";

export async function readShop(port: BookPort): Promise<Shop> {
  return (await readKept(port)).shop;
}

export interface KeptShop {
  readonly shop: Shop;
  /** False where someone changed by hand what was kept, so that some or all of it can no longer be read. */
  readonly isReadable: boolean;
}

export async function readKept(port: BookPort): Promise<KeptShop> {
  const { values, unreadable } = await readSettings(port);
  const told = Object.entries(recordOf(values.get(SHOP_KEY)));
  const read = told.filter((one): one is [ShopFieldId, ShopValue] => isField(one[0]) && isShopValue(one[1]));
  const isReadable = !unreadable.includes(SHOP_KEY) && (!values.has(SHOP_KEY) || isRecord(values.get(SHOP_KEY))) && told.filter(([id]) => isField(id)).length === read.length;
  return { shop: Object.fromEntries(read), isReadable };
}

/** The shop with what the cells hold that it names; a cell that holds nothing tells nothing. */
export function withCells(shop: Shop, sheets: readonly SheetReading[]): Shop {
  const told = Object.entries(shop).flatMap(([id, value]): [string, ShopValue][] => {
    if (!("cell" in value)) return [[id, value]];
    const spot = readAddress(value.cell);
    const held = spot && sheets.find(({ info }) => info.name === value.sheet)?.at(spot.row, spot.column);
    if (!held || held.error || held.value === null || typeof held.value === "boolean") return [];
    return [[id, { value: held.value, ...(value.unit === undefined ? {} : { unit: value.unit }) }]];
  });
  return Object.fromEntries(told) as Shop;
}

/** What the workbook is to keep from now on. Fields that a newer release keeps beside these stay as they are. */
export async function shopChanges(port: BookPort, shop: Shop): Promise<readonly Change[]> {
  const others = Object.entries(recordOf((await readSettings(port)).values.get(SHOP_KEY))).filter(([id]) => !isField(id));
  const kept = { ...shop, ...Object.fromEntries(others) };
  return settingsChanges(port, new Map([[SHOP_KEY, Object.keys(kept).length === 0 ? undefined : kept]]));
}

const isField = (id: string): boolean => shopFields.some((field) => field.id === id);

const recordOf = (value: unknown): Readonly<Record<string, unknown>> => (isRecord(value) ? value : {});
const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> => typeof value === "object" && value !== null && !Array.isArray(value);

function isShopValue(value: unknown): value is ShopValue {
  if (!isRecord(value) || !["undefined", "string"].includes(typeof value["unit"])) return false;
  return typeof value["value"] === "number" || typeof value["value"] === "string" || (typeof value["sheet"] === "string" && typeof value["cell"] === "string");
}
