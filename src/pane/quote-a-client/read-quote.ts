import { dayNumber, readDay } from "../../lots/calendar";
import type { Offer, OfferField, Payment, PerMass, QuoteInput } from "../../lots/quote";
import { OfferFault, type QuoteFigures, quoteFigures } from "../../lots/quote-figures";
import type { BookPort } from "../../workbook/port";
import type { Notation } from "../notation";
import { readingValues } from "../value-reading";
import type { Entered } from "./memory";
import { LABELS, type QuoteKey } from "./quote-keys";

/** The form as it is read. */
export interface ReadQuote {
  readonly faults: ReadonlyMap<QuoteKey, string>;
  /** Labels of what is still to be written. */
  readonly needs: readonly string[];
  /** Null while something is missing or wrong. */
  readonly result: { readonly offer: Offer; readonly figures: QuoteFigures } | null;
  /** What the paper says beside the offer; null while something of it is missing or wrong. */
  readonly paper: Pick<QuoteInput, "number" | "date" | "days" | "client" | "goods" | "basis" | "priceFrom"> | null;
}

const NEEDED: readonly QuoteKey[] = ["weight", "low", "likely", "high", "price", "payable", "days"];

export async function readQuote(entered: (key: QuoteKey) => Entered, notation: Notation, port: BookPort): Promise<ReadQuote> {
  const faults = new Map<QuoteKey, string>();
  const text = (key: QuoteKey): string => entered(key).text.trim();
  const needs = NEEDED.filter((key) => text(key) === "").map((key) => LABELS[key]);
  const values = readingValues(notation, port);

  async function one(key: OfferField): Promise<number | string | undefined> {
    const read = await values.read(text(key));
    if (read !== null && "fault" in read) return fault(key, read.fault);
    return read?.value;
  }
  async function number(key: OfferField): Promise<number | undefined> {
    const value = await one(key);
    return typeof value === "string" ? fault(key, `Cannot read ${value}: write the number alone`) : value;
  }
  async function rate(key: "price" | "refiningCharge" | "treatmentCharge"): Promise<PerMass | undefined> {
    const value = await number(key);
    return value === undefined ? undefined : { value, unit: entered(key).unit ?? "ozt" };
  }
  function fault(key: QuoteKey, sentence: string): undefined {
    faults.set(key, sentence);
    return undefined;
  }

  const [weight, price, payable] = [await number("weight"), await rate("price"), await one("payable")];
  const [low, likely, high] = [await one("low"), await one("likely"), await one("high")];
  const [swing, deduction, lotCharges] = [await one("swing"), await one("deduction"), await number("lotCharges")];
  const [refiningCharge, treatmentCharge] = [await rate("refiningCharge"), await rate("treatmentCharge")];
  let result: ReadQuote["result"] = null;
  if (faults.size === 0 && weight !== undefined && price && payable !== undefined && low !== undefined && likely !== undefined && high !== undefined) {
    const offer: Offer = {
      weight: { value: weight, unit: entered("weight").unit ?? "g" },
      low,
      likely,
      high,
      terms: {
        price,
        payable,
        ...(swing === undefined ? {} : { swing }),
        ...(refiningCharge ? { refiningCharge } : {}),
        ...(treatmentCharge ? { treatmentCharge } : {}),
        ...(lotCharges === undefined ? {} : { lotCharges }),
        ...(deduction === undefined ? {} : { deduction }),
      },
      payment: text("payment") as Payment,
      metalUnit: text("metalUnit"),
    };
    try {
      result = { offer, figures: quoteFigures(offer) };
    } catch (thrown) {
      if (!(thrown instanceof OfferFault)) throw thrown;
      for (const field of thrown.fields) fault(field, thrown.message);
      if (thrown.fields.length === 0) fault("price", thrown.message);
    }
  }
  return { faults, needs, result, paper: paper() };

  function paper(): ReadQuote["paper"] {
    const day = readDay(text("date"));
    const days = Number(text("days"));
    if (text("number") === "") fault("number", "Write the number of the quote");
    if (!day) fault("date", "Write the day of the quote");
    if (text("days") === "") return null;
    if (!Number.isInteger(days) || days < 0 || days > 3650) fault("days", `Cannot use ${text("days")}: write whole days, such as 14`);
    if (!day || faults.has("number") || faults.has("days")) return null;
    const priceFrom = values.lastCell(text("price"));
    const told = (key: "client" | "goods" | "basis") => (text(key) === "" ? {} : { [key]: text(key) });
    return { number: text("number"), date: dayNumber(day), days, ...told("client"), ...told("goods"), ...told("basis"), ...(priceFrom === null ? {} : { priceFrom }) };
  }
}
