import type { Model } from "@odoo/o-spreadsheet";
import { keptIn } from "../engine/kept";
import type { CellWrite, NewSheet, Note, Picture } from "./port";

/** What one write asked for, kept beside the grid since a saved file holds more of it than the grid shows. Names and addresses are as the grid writes them. */
export interface KeptChange {
  readonly id: string;
  readonly cells: readonly CellWrite[];
  readonly sheets: readonly NewSheet[];
  readonly notes: readonly Note[];
  readonly pictures: readonly Picture[];
}

/** What was written and not taken back, in the order of writing. */
export const keptChanges = (model: Model): readonly KeptChange[] => [...keptIn(model).values()] as KeptChange[];

/** Pictures that the port put there are told from others by this beginning of their ids. */
export const PICTURE = "lotwright-picture-";
