import type { SettleField } from "../../lots/settlement";

/** The fields of the form. */
export type SettleKey = SettleField | "client" | "goods" | "payment" | "metalUnit" | "number" | "date" | "quoted";

export const LABELS: Readonly<Record<SettleKey, string>> = {
  client: "Client",
  goods: "Goods",
  weight: "Net weight",
  ours: "Our assay",
  theirs: "The client’s assay",
  limit: "Splitting limit",
  umpire: "Umpire’s assay",
  price: "Price",
  payable: "Payable share",
  refiningCharge: "Refining charge",
  treatmentCharge: "Treatment charge",
  lotCharges: "Lot charges",
  deduction: "Least deduction",
  payment: "Payment",
  metalUnit: "Metal returned in",
  outturn: "Crystal weighed out",
  dropped: "Cement silver dropped",
  liquor: "Left in the liquor, by test",
  stubs: "Silver on stubs",
  residues: "In filters, slimes and crucible skin",
  quoted: "Quoted payout",
  number: "Statement number",
  date: "Date",
};

/** With a unit beside them. */
export type WeightKey = "weight" | "outturn" | "dropped" | "liquor" | "stubs" | "residues";
export type RateKey = "price" | "refiningCharge" | "treatmentCharge";
