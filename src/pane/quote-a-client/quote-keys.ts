import type { OfferField } from "../../lots/quote";

/** The fields of the form. */
export type QuoteKey = OfferField | "client" | "goods" | "basis" | "payment" | "metalUnit" | "number" | "date" | "days";

/** Those that are said anew when another lot is chosen. */
export const OF_THE_LOT: readonly QuoteKey[] = ["client", "goods", "weight", "low", "likely", "high", "basis", "price", "payable", "refiningCharge", "treatmentCharge", "lotCharges", "deduction"];

export const LABELS: Readonly<Record<QuoteKey, string>> = {
  client: "Client",
  goods: "Goods",
  weight: "Net weight",
  low: "Low fineness",
  likely: "Likely fineness",
  high: "High fineness",
  basis: "Fineness known from",
  price: "Price",
  swing: "Price may go down or up by",
  payable: "Payable share",
  refiningCharge: "Refining charge",
  treatmentCharge: "Treatment charge",
  lotCharges: "Lot charges",
  deduction: "Least deduction",
  payment: "Payment",
  metalUnit: "Metal given back in",
  number: "Quote number",
  date: "Date",
  days: "Days that it holds",
};
