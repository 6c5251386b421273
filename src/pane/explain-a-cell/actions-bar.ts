import { apply } from "../../workbook/plan";
import type { BookPort } from "../../workbook/port";
import { copyText } from "../copy-text";
import { fill, h } from "../dom";
import { status } from "../status";
import type { Explanation } from "../../explaining/explain";
import { explanationText } from "../../explaining/explanation-text";
import { type Keeping, keeping } from "./keep";
import { keepView } from "./keep-view";
import { memory } from "./memory";

/** What can be done with an explanation. */
export interface ActionsBar {
  readonly element: HTMLElement;
  /** Takes a question back that is open; false where there is none. */
  cancel(): boolean;
  say: ReturnType<typeof status>["say"];
}

interface Needs {
  readonly port: BookPort;
  /** The explanation with the numbers of this moment; null where nothing is explained. */
  latest(): Promise<Explanation | null>;
  shown(): Element;
}

export function actionsBar({ port, latest, shown }: Needs): ActionsBar {
  const told = status();
  const question = h("div", {});
  const copy = h("button", { type: "button", onclick: () => void guarded(copyIt) }, "Copy as text");
  const keep = h("button", { type: "button", onclick: () => void guarded(ask) }, "Put beside as a note");
  const buttons = h("div", { class: "lw-actions" }, copy, keep);
  let isOpen = false;
  let isBusy = false;

  function close(): boolean {
    const wasOpen = isOpen;
    isOpen = false;
    fill(question);
    buttons.hidden = false;
    return wasOpen;
  }
  function cancel(): boolean {
    const wasOpen = close();
    if (wasOpen) keep.focus();
    return wasOpen;
  }
  async function copyIt(): Promise<void> {
    const explanation = await latest();
    if (explanation) told.say(await copyText(explanationText(explanation), shown()));
  }
  async function ask(): Promise<void> {
    const explanation = await latest();
    if (!explanation) return;
    const asked = await keeping(explanation, port);
    const view = keepView(asked, () => void guarded(() => write(asked)), () => void cancel());
    isOpen = true;
    told.say("");
    fill(question, view.element);
    buttons.hidden = true;
    view.focus();
  }
  async function write({ plan, where }: Keeping): Promise<void> {
    const { undo } = await apply(port, plan, () => true);
    close();
    memory.kept = { port, where, undo };
    offerUndo(where);
    keep.focus();
  }
  const takingBack = { label: "Undo", run: () => void guarded(undo, takingBack) };
  function offerUndo(where: string): void {
    told.say(`${where} holds the working`, takingBack);
  }
  async function undo(): Promise<void> {
    if (!memory.kept) return;
    const { where, undo } = memory.kept;
    await undo();
    memory.kept = null;
    told.say(`${where} is as it was`);
    keep.focus();
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

  if (memory.kept?.port === port) offerUndo(memory.kept.where);
  return { element: h("section", { class: "lw-bar", "aria-label": "What to do with the working" }, question, buttons, told.element), cancel, say: told.say };
}
