import type { ShopFieldId, ShopKind } from "./shop";

export interface ShopField {
  readonly id: ShopFieldId;
  readonly title: string;
  readonly kind: ShopKind;
  readonly about: string;
  /** What many shops use; a suggestion, never put in by itself. */
  readonly usual?: string;
  /** The unit that is offered first. */
  readonly unit?: string;
  /** What cannot be had while it is not told. */
  readonly feeds?: readonly string[];
  /** It often stands in a cell of the workbook already. */
  readonly isOftenACell?: true;
}

/** What is written as it is typed; the others are numbers, and a cell can hold them. */
const TEXTS: readonly ShopKind[] = ["line", "lines", "paper", "number series"];
export const isNumber = (kind: ShopKind): boolean => !TEXTS.includes(kind);

export interface ShopGroup {
  readonly title: string;
  /** What the group is for. */
  readonly about: string;
  readonly caution?: string;
  readonly fields: readonly ShopField[];
}

const field = (id: ShopFieldId, title: string, kind: ShopKind, about: string, more: Omit<ShopField, "id" | "title" | "kind" | "about"> = {}): ShopField => ({ id, title, kind, about, ...more });

const RULE_OF_THUMB = "common practice, no source";

const [AIRFLOW, HOURS, RINSES] = ["airflow", "hours of the drop", "rinses"] as const;

/** In the order of the work. */
export const shopGroups: readonly ShopGroup[] = [
  {
    title: "The shop and its papers",
    about: "Stands at the head of quotes and statements.",
    fields: [
      field("name", "Name", "line", "As clients know the shop.", { feeds: ["the shop’s name on papers"] }),
      field("address", "Address", "lines", "With telephone or e-mail, a line each.", { feeds: ["its address on papers"] }),
      field("currency", "Sign of money", "line", "Before amounts on papers, such as $, £ or CA$.", { feeds: ["the sign before amounts"] }),
      field("paper", "Paper", "paper", "On which quotes and statements are printed. Not told: the paper that your spreadsheet takes."),
      field("quoteNumber", "First quote number", "number series", "The next ones go on from it, or from the quotes in the workbook.", { usual: "Q-2026-001" }),
      field("statementNumber", "First statement number", "number series", "The next ones go on from it, or from the statements in the workbook.", { usual: "S-2026-001" }),
      field("quoteDays", "Days that a quote holds", "days", `For “valid until”. A week or two: ${RULE_OF_THUMB}.`, { usual: "14" }),
    ],
  },
  {
    title: "Usual terms",
    about: "What a new lot or quote begins with; each can be changed there. What is empty here is asked for there.",
    fields: [
      field("payable", "Payable", "share", "The share of the fine weight that is paid for, as 97% or 0.97."),
      field("refiningCharge", "Refining charge", "per mass", "For the payable fine weight.", { unit: "ozt" }),
      field("treatmentCharge", "Treatment charge", "per mass", "For the net weight.", { unit: "lb" }),
      field("lotCharges", "Lot charges", "money", "Once for each lot: melt, assay, handling."),
      field("deduction", "Minimum deduction", "per thousand", "Taken from the fineness at the least, as 5‰ or 0.5%."),
      field("price", "Price of fine silver", "per mass", "A number, or the cell of the workbook that holds it, such as Prices!B5.", { unit: "ozt", isOftenACell: true }),
      field("priceSwing", "Swing of the price in a quote", "share", "A quote shows the payout with the price down and up by it, as 5%."),
    ],
  },
  {
    title: "Acid and pails",
    about: "For acid, pails, fume and airflow in the plan of a lot.",
    caution: "Nitric acid burns, and its fume injures before it warns. These figures plan a purchase and are no procedure; local fire, air and waste codes and licensed practice decide.",
    fields: [
      field("acidStrength", "Strength of the nitric acid", "strength", `By mass, as its label says, 5% to 70%. Concentrated acid is about 68%: ${RULE_OF_THUMB}.`, { usual: "68%", feeds: ["acid, and all that goes by its volume: pails, hours, rinses, spent liquor"] }),
      field("acidExcess", "Acid beyond the reaction’s need", "share", "As 5%. Not told: none."),
      field("pail", "Volume of a pail", "volume", "To its brim.", { unit: "L", feeds: ["pails"] }),
      field("pailFill", "Fill of a pail", "share", `Dissolving foams and rises. Four fifths: ${RULE_OF_THUMB}; the plan takes that where it is not told.`, { usual: "80%" }),
      field("fumeHours", "Hours in which the fume comes off", "hours", "Of one batch; the airflow is an average over them and never says that air is fit to breathe.", { feeds: [AIRFLOW] }),
      field("airLimit", "Limit for nitrogen dioxide in the air", "ppm", "The one that the law of your place sets.", { feeds: [AIRFLOW] }),
      field("airSafety", "Safety factor of the airflow", "factor", "Times the computed one: more for a room in which air mixes badly, 1 or more. Not told: 1."),
    ],
  },
  {
    title: "Copper and the drop",
    about: "For copper, bars, hours and salt in the plan of a lot.",
    caution: "Silver nitrate and nitric acid burn skin and eyes. A drop is done when the test says so, not when the hours are over; local codes and licensed practice decide.",
    fields: [
      field("copperAllowance", "Copper beyond the reaction’s need", "share", `For free acid and what falls off. 13% makes it one pound of copper for three of silver: ${RULE_OF_THUMB}. Not told: none.`, { usual: "13%" }),
      field("copperBar", "Weight of a new copper bar", "mass", "", { unit: "lb", feeds: ["copper bars"] }),
      field("copperStub", "Share of a bar left as its stub", "share", "As 15%. Not told: none."),
      field("dropStart", "Silver in the liquor when a drop begins", "grams per litre", "By test. Not told: computed from the acid and the water of the lot."),
      field("dropTarget", "Silver at which a drop is done", "grams per litre", "By test.", { feeds: [HOURS, "salt for the last silver"] }),
      field("dropRate", "Rate of your drops", "per hour", `LOT.DROPRATE gives it from readings of an earlier lot. 0.19 leaves a ten-thousandth after two days under air: ${RULE_OF_THUMB}.`, { usual: "0.19", feeds: [HOURS] }),
      field("settleHours", "Hours to settle", "hours", `Before the liquor is drawn off. A day: ${RULE_OF_THUMB}.`, { usual: "24", feeds: ["times of the drop"] }),
      field("saltExcess", "Salt beyond the reaction’s need", "share", "As 50%. Not told: none."),
    ],
  },
  {
    title: "Washing",
    about: "For the number of rinses in the plan of a lot.",
    caution: "Spent liquor and rinse water hold acid and copper: they are treated as waste by local water and waste codes and licensed practice.",
    fields: [
      field("retained", "Liquid that a decanting leaves", "volume", "With the cement silver.", { unit: "L", feeds: [RINSES] }),
      field("rinse", "Water of one rinse", "volume", "", { unit: "L", feeds: [RINSES] }),
      field("rinseTarget", "Copper to rinse down to", "grams per litre", "In the last rinse.", { feeds: [RINSES] }),
    ],
  },
  {
    title: "Melt and cell",
    about: "For heats, bars, hours and power in the plan of a lot.",
    caution: "Hot metal and a damp mould throw metal about: dry and preheat. The electrolyte of the cell is silver nitrate in nitric acid; local codes and licensed practice decide.",
    fields: [
      field("crucible", "Silver that a crucible takes", "mass", "In one heat.", { unit: "ozt", feeds: ["heats"] }),
      field("mould", "Silver that a bar mould takes", "mass", "", { unit: "ozt", feeds: ["silver bars"] }),
      field("cellAmps", "Current of the cell", "amperes", "", { feeds: ["hours in the cell"] }),
      field("cellVolts", "Voltage of the cell", "volts", "", { feeds: ["energy of the cell"] }),
      field("cellEfficiency", "Current efficiency", "share", `The share of the current that deposits silver. 95%: ${RULE_OF_THUMB}; the plan takes that where it is not told.`, { usual: "95%" }),
    ],
  },
  {
    title: "Scales and assays",
    about: "Standard uncertainties (k = 1): with them it is judged whether scales and assays explain what a month lacks. What is empty here is asked for when a month is closed.",
    fields: [
      field("scale", "Uncertainty of a weighing", "mass", "From the scale’s certificate, or from weighing one thing ten times.", { unit: "g" }),
      field("scaleBias", "Uncertainty shared by all weighings", "share", "What the calibration of the scale may be off, as 0.05%."),
      field("assay", "Uncertainty of an assay", "per thousand", "As 1.5‰."),
    ],
  },
];

export const shopFields: readonly ShopField[] = shopGroups.flatMap(({ fields }) => fields);

/** What of a group cannot be had while these fields are told and no others. */
export const leftOut = ({ fields }: ShopGroup, told: ReadonlySet<ShopFieldId>): readonly string[] => [...new Set(fields.flatMap(({ id, feeds }) => (told.has(id) ? [] : (feeds ?? []))))];
