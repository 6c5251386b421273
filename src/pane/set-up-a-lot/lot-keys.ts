import type { Choice } from "../form-field";

/** The fields of the form. */
export type LotKey = "lot" | "date" | "client" | "description" | "status" | "gross" | "tare" | "fineness" | "basis" | "uncertainty" | "stamp" | TermKey;

export type TermKey = "price" | "payable" | "refiningCharge" | "treatmentCharge" | "lotCharges" | "deduction";

export const TERM_KEYS: readonly TermKey[] = ["price", "payable", "deduction", "refiningCharge", "treatmentCharge", "lotCharges"];

/** From where a fineness is known. */
export const BASES: readonly Choice[] = [
  { value: "", label: "not said" },
  { value: "stamp", label: "the stamp" },
  { value: "our assay", label: "our assay" },
  { value: "client's assay", label: "the client's assay" },
  { value: "agreed", label: "agreed with the client" },
];
