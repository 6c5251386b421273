import type { Measurement } from "./month-input";
import { ROWS } from "./month-places";
import { type Term, cell } from "./term";

/** How well the shop measures, in the cells of the month's sheet. */
export interface Measured {
  readonly scale: Term;
  readonly scaleUnit: string;
  /** In parts per thousand. */
  readonly assay: Term;
}

export const measuredIn = ({ scale, assay }: Measurement): Measured => ({
  scale: cell(`$B$${ROWS.scale}`, scale.value),
  scaleUnit: scale.unit,
  assay: cell(`$B$${ROWS.assay}`, assay),
});
