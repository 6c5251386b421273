import type { Undo } from "../../workbook/plan";
import type { BookPort } from "../../workbook/port";

/** Kept while the program runs and stored nowhere: what was put beside a cell can be taken back though the pane was closed. */
export const memory = {
  kept: null as (Undo & { readonly port: BookPort; readonly where: string }) | null,
};
