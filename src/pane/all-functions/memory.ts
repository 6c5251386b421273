import type { Entry } from "../../catalogue/entry";
import type { Undo } from "../../workbook/plan";
import type { BookPort } from "../../workbook/port";

/** What was typed into a form, seen from the sheet that was selected then. */
export interface Form {
  texts: readonly string[];
  sheet: string | null;
}

/** Kept while the program runs and stored nowhere: a pane that is closed opens again as it was. */
export const memory = {
  query: "",
  open: null as string | null,
  forms: new Map<string, Form>(),
  /** The newest insertion, while it can be undone. */
  inserted: null as (Undo & { readonly port: BookPort; readonly cell: string }) | null,
};

export function formOf(entry: Pick<Entry, "id" | "parameters">): Form {
  const known = memory.forms.get(entry.id);
  if (known) return known;
  const fresh: Form = { texts: entry.parameters.map(() => ""), sheet: null };
  memory.forms.set(entry.id, fresh);
  return fresh;
}
