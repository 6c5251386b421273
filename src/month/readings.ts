import type { Verdict } from "./figures";

/** What a verdict means, and what to look at first. */
export interface Reading {
  readonly meaning: string;
  readonly lookFirst: string;
}

/** Each text stands in a formula too, which takes 255 characters of one. */
export const READINGS: Readonly<Record<Verdict, Reading>> = {
  "within measurement": {
    meaning: "Weighing, assay and the scale's bias explain the gap: nothing shows that metal is missing or over.",
    lookFirst: "Nothing. Where the gap leans to one side month after month, put a known weight on the scale.",
  },
  "metal missing": {
    meaning: "More metal is gone than weighing, assay and the scale's bias can explain.",
    lookFirst: "Stock not counted: liquor, stubs, filters, lots in process. Then a shipment left out, a lot listed twice, the scale.",
  },
  "metal over": {
    meaning: "There is more metal than the books say, by more than weighing, assay and the scale's bias can explain.",
    lookFirst: "Stock counted twice, or metal of the next month's lots. Then a shipment entered too high, a fineness taken too low.",
  },
};
