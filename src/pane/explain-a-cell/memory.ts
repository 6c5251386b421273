import type { Undo } from "../../workbook/plan";
import type { WorkbookPort } from "../../workbook/port";

/** Kept while the program runs and stored nowhere: what was put beside a cell can be taken back though the pane was closed. */
export const memory = {
  kept: null as (Undo & { readonly port: WorkbookPort; readonly where: string }) | null,
};
