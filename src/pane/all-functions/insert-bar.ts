import type { Entry } from "../../catalogue/entry";
import { wholeCall } from "../../formulas/lot-calls";
import type { Plan } from "../../workbook/plan";
import { areaText } from "../../workbook/xlsx/address";
import { fill, h } from "../dom";
import type { PaneHost } from "../pane-host";
import type { Selected } from "../selection";
import { type Argument, readArgument } from "../argument";
import { type Computed, type Outcome, compute } from "./compute";
import { formulaOf } from "./formula";
import { type Insertion, type Size, areaOf, insert, review } from "./insertion";
import { memory } from "./memory";
import { type Notation, portNotation } from "../notation";
import { type OverwriteView, overwriteView } from "./overwrite-view";
import { isSpill, resultLine, shownValue, sizeOf } from "./result-view";
import { status } from "../status";

/** What stands below the form: the result, the formula, and the way into a cell and back. */
export interface InsertBar {
  readonly element: HTMLElement;
  edited(formula: string): void;
  computed(outcome: Outcome): void;
  selected(now: Selected | string): void;
  /** Inserts, or asks for what is missing. */
  press(): void;
  /** Ends a question that is open; false where there is none. */
  cancel(): boolean;
  say: ReturnType<typeof status>["say"];
}

interface Needs {
  readonly entry: Entry;
  readonly entries: readonly Entry[];
  readonly host: PaneHost;
  readonly notation: Notation;
  latest(): Promise<Computed>;
  arguments(): readonly Argument[];
  focusField(parameter: string): void;
  /** Brings the cells of the result into view. */
  look(): void;
}

export function insertBar(needs: Needs): InsertBar {
  const { entry, entries, host, notation } = needs;
  const { port } = host;
  const result = h("output", { class: "lw-result" });
  const formula = h("code");
  const place = h("span", {});
  const look = h("button", { type: "button", class: "lw-quiet", onclick: needs.look }, "Look at them");
  const fills = h("p", { class: "lw-fills", hidden: true }, place, look);
  const button = h("button", { type: "submit", class: "lw-primary" });
  const question = h("div", {});
  const told = status();
  let selected: Selected | null = null;
  let problem = "";
  let open: { readonly view: OverwriteView; readonly plan: Plan } | null = null;
  let isBusy = false;
  let latest: Outcome = { kind: "waiting", needs: [] };

  function name(): void {
    button.textContent = selected ? `Insert at ${selected.cell}` : "Insert";
    const spill = latest.kind === "result" && isSpill(latest.rows) ? sizeOf(latest.rows) : null;
    const area = spill && selected && areaOf({ cell: selected.cell, ...spill });
    fills.hidden = spill === null;
    place.textContent = area ? `Fills ${areaText(area)}. ` : "";
  }
  function close(): boolean {
    const wasOpen = open !== null;
    open = null;
    fill(question);
    button.hidden = false;
    return wasOpen;
  }
  function cancel(): boolean {
    const wasOpen = close();
    if (wasOpen) button.focus();
    return wasOpen;
  }

  async function press(): Promise<void> {
    if (open) return open.view.isTicked() ? write(open.plan, true) : open.view.focus();
    const { outcome } = await needs.latest();
    const missing = whatIsMissing(outcome);
    if (missing) {
      told.say(missing.sentence);
      if (missing.parameter !== undefined) needs.focusField(missing.parameter);
      return;
    }
    if (!selected) return told.say(problem || "Select the cell that the formula is to stand in");
    const insertion = insertionAt(selected, outcome);
    const reviewed = await review(port, insertion, spillOf(selected.sheet));
    if ("refusal" in reviewed) return told.say(reviewed.refusal);
    const filled = reviewed.plan.cells.find(({ overwrites }) => overwrites);
    if (!filled) return write(reviewed.plan, false);
    const shows = outcome.kind === "result" ? shownValue(outcome.rows[0]?.[0] ?? "", notation) : "an error";
    const after = { formula: formulaOf(entry.name, needs.arguments(), notation, selected.sheet), shows };
    open = { view: overwriteView(filled, after, () => void cancel()), plan: reviewed.plan };
    told.say("");
    fill(question, open.view.element);
    button.hidden = true;
    open.view.focus();
  }

  function insertionAt({ sheet, cell }: Selected, outcome: Outcome): Insertion {
    const given = needs.arguments();
    const fills = outcome.kind === "result" ? sizeOf(outcome.rows) : { rows: 1, columns: 1 };
    const reads = given.flatMap((argument) => (argument.kind === "cells" ? [argument.range] : []));
    return { sheet, cell, formula: formulaOf(entry.name, given, portNotation, sheet), ...fills, reads };
  }

  /** How many cells a formula that stands in the sheet fills, where it is one of ours. */
  const spillOf = (sheet: string) => async (written: string): Promise<Size> => {
    const call = wholeCall(written);
    const its = entries.find((one) => one.name === call?.name);
    if (!call || !its?.spills) return { rows: 1, columns: 1 };
    const { outcome } = await compute(its, call.arguments.map((text) => readArgument(text, portNotation)), sheet, port);
    return outcome.kind === "result" ? sizeOf(outcome.rows) : { rows: 1, columns: 1 };
  };

  function whatIsMissing(outcome: Outcome): { sentence: string; parameter?: string | undefined } | null {
    if (outcome.kind === "waiting") return { sentence: "Fill in what is still needed first", parameter: outcome.needs[0] };
    if (outcome.kind === "result" || (outcome.canWait && !entry.spills)) return null;
    const cure = outcome.canWait ? "how many cells it fills is not known until they are mended" : "correct it first";
    return { sentence: `Not inserted: ${cure}`, parameter: outcome.parameters[0] };
  }

  async function write(plan: Plan, overwrite: boolean): Promise<void> {
    const cell = plan.cells[0]?.write.cell ?? "";
    close();
    const { undo } = await insert(port, plan, overwrite);
    memory.inserted = { port, cell, undo };
    offerUndo(`Inserted at ${cell}`);
    if (overwrite) button.focus();
  }
  const takingBack = { label: "Undo", run: () => void guarded(undo, takingBack) };
  function offerUndo(sentence: string): void {
    told.say(sentence, takingBack);
  }
  async function undo(): Promise<void> {
    if (!memory.inserted) return;
    const { cell, undo } = memory.inserted;
    await undo();
    memory.inserted = null;
    told.say(`${cell} is as it was`);
    button.focus();
  }
  /** What the workbook refuses is said, whatever it is, with what can be tried again. */
  async function guarded(step: () => Promise<void>, again?: typeof takingBack): Promise<void> {
    if (isBusy) return;
    isBusy = true;
    try {
      await step();
    } catch (thrown) {
      told.say(thrown instanceof Error ? thrown.message : String(thrown), again);
    } finally {
      isBusy = false;
    }
  }

  if (memory.inserted?.port === port) offerUndo(`Inserted at ${memory.inserted.cell}`);
  name();
  return {
    element: h("section", { class: "lw-bar", "aria-label": "Result and insertion" }, result, fills, h("p", { class: "lw-formula" }, h("span", { class: "lw-unseen" }, "Formula: "), formula), question, h("div", { class: "lw-actions" }, button), told.element),
    edited(written) {
      close();
      formula.textContent = written;
    },
    computed(outcome) {
      latest = outcome;
      const line = h("span", {}, ...resultLine(outcome, notation));
      // The same result is not announced again.
      if (!line.isEqualNode(result.firstChild)) fill(result, line);
      name();
    },
    selected(now) {
      selected = typeof now === "string" ? null : now;
      problem = typeof now === "string" ? now : "";
      if (problem) told.say(problem);
      name();
    },
    press: () => void guarded(press),
    cancel,
    say: told.say,
  };
}

