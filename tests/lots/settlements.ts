import type { StatementInput } from "../../src/lots/settlement";
import { dayNumber } from "../../src/lots/calendar";

/** An invented lot, settled by exchange of assays. */
export const settling: StatementInput = {
  number: "S-2026-007",
  date: dayNumber({ year: 2026, month: 3, day: 20 }),
  shop: { name: "Quillmere Silver", address: "1 Mill Lane\nPort Hollow", currency: "$" },
  client: "=North Bench",
  lot: "26-03-07",
  goods: "Trays, with solder",
  weight: { value: 12.35, unit: "lb" },
  assays: { ours: 801.5, theirs: "80%", limit: 3 },
  terms: { price: { value: 408.33, unit: "lb" }, payable: "95%", refiningCharge: { value: 0.55, unit: "ozt" }, treatmentCharge: { value: 1.1, unit: "kg" }, lotCharges: 25, deduction: "5‰" },
  payment: "money",
  metalUnit: "ozt",
  found: { outturn: { value: 4.4, unit: "kg" }, stubs: { value: 0.9, unit: "ozt" }, residues: { value: 0.35, unit: "ozt" }, liquor: { value: 0.05, unit: "ozt" } },
  quoted: { payout: 3150.5, quote: "Quote Q-2026-003" },
  uncertainty: { scale: { value: 1, unit: "g" }, assay: "1.5‰" },
};
