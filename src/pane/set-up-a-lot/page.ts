import { fill, freshId, h } from "../dom";
import { userNotation } from "../notation";
import type { Page } from "../page";
import type { PaneHost } from "../pane-host";
import { painted } from "../painted";
import { status } from "../status";
import { lotStep } from "./lot-step";
import { draftOf } from "./memory";
import { planStep } from "./plan-step";
import { type Session, readSession } from "./session";
import type { Step } from "./step";
import { whereStep } from "./where-step";
import { writeStep } from "./write-step";

/** Four steps from a workbook to a lot in it. */
export function setUpPage(host: PaneHost, leave: () => void): Page {
  const { port } = host;
  const notation = userNotation(host);
  const draft = draftOf(port);
  const told = status();
  let read: Session | null = null;
  let isClosed = false;
  let isBusy = false;

  const session = (): Session => {
    if (!read) throw new Error("The workbook was not read yet: the fault is in Lotwright, please report it");
    return read;
  };
  async function readAgain(): Promise<void> {
    read = await readSession(port);
  }
  const where = whereStep({ draft, session, readAgain, say: told.say });
  const lot = lotStep({ draft, port, notation, session });
  const plan = planStep({ notation, session, lot: lot.lot });
  const write = writeStep({ draft, port, notation, tableReferences: host.tableReferences === true, session, readAgain, lot: lot.lot, planRemarks: () => plan.remarks, anew: () => void anew(), ready });
  const steps: readonly Step[] = [where, lot, plan, write];
  const LAST = steps.length - 1;

  const headingId = freshId("step");
  const heading = h("h2", { id: headingId, tabindex: -1, class: "lw-step-title" });
  const line = h("ol", { class: "lw-steps", "aria-label": "Steps" });
  const body = h("section", { class: "lw-step", "aria-labelledby": headingId });
  const back = h("button", { type: "button", onclick: () => void goTo(draft.step - 1) }, "Back");
  const next = h("button", { type: "submit", class: "lw-primary" }, "Next");
  const bar = h("div", { class: "lw-bar" }, lot.bar, told.element, h("div", { class: "lw-actions" }, back, next));
  const form = h("form", { novalidate: true, "aria-labelledby": headingId, onsubmit: (event) => void (event.preventDefault(), forward()) }, body, bar);

  async function start(): Promise<void> {
    fill(body, h("p", { role: "status", class: "lw-about" }, "Reading the workbook …"));
    bar.hidden = true;
    heading.textContent = "";
    await guarded(async () => {
      await painted();
      await readAgain();
      if (!isClosed) await showStep(draft.step, false);
    });
    if (!read && !isClosed) fill(body, told.element, h("div", { class: "lw-actions" }, h("button", { type: "button", onclick: () => void start() }, "Look again")));
  }
  async function showStep(to: number, isMove: boolean): Promise<void> {
    const step = steps[to];
    if (!step) return;
    if (draft.step !== to) steps[draft.step]?.close();
    draft.step = to;
    heading.textContent = step.title;
    showLine();
    bar.hidden = false;
    lot.bar.hidden = to !== 1;
    back.hidden = to === 0;
    next.hidden = false;
    next.disabled = false;
    next.textContent = to === LAST ? "Write the lot" : "Next";
    told.say("");
    fill(body, step.element);
    await step.enter();
    if (!isMove) return;
    if (!step.focus()) heading.focus({ preventScroll: true });
    const root = form.closest(".lotwright-pane");
    if (root) root.scrollTop = 0;
  }
  function showLine(): void {
    fill(
      line,
      ...steps.map(({ title }, i) => {
        const isHere = i === draft.step;
        const words = [h("span", { class: "lw-step-number" }, String(i + 1)), ` ${title}`];
        const isBehind = i < draft.step && draft.done === null;
        return h("li", isHere ? { "aria-current": "step" } : {}, isBehind ? h("button", { type: "button", class: "lw-word", onclick: () => void goTo(i) }, ...words) : h("span", {}, ...words));
      }),
    );
  }
  /** The last step has something to write, or has written it. */
  function ready(isReady: boolean): void {
    next.disabled = !isReady;
    bar.hidden = draft.done !== null;
    showLine();
  }
  const goTo = (to: number): Promise<void> => guarded(() => showStep(to, true));
  const forward = (): Promise<void> =>
    guarded(async () => {
      const step = steps[draft.step];
      if (!step || next.disabled || bar.hidden) return;
      if (draft.step === LAST) await write.write();
      else if (await step.mayLeave()) await showStep(draft.step + 1, true);
    });
  async function anew(): Promise<void> {
    await guarded(async () => {
      await readAgain();
      steps[LAST]?.close();
      await showStep(0, true);
    });
  }
  /** What the workbook refuses is said, whatever it is. */
  async function guarded(work: () => Promise<void>): Promise<void> {
    if (isBusy) return;
    isBusy = true;
    try {
      await work();
    } catch (thrown) {
      told.say(thrown instanceof Error ? thrown.message : String(thrown));
    } finally {
      isBusy = false;
    }
  }

  void start();
  return {
    element: h(
      "div",
      { class: "lw-page lw-set-up" },
      h("header", { class: "lw-top" }, h("button", { type: "button", class: "lw-back", onclick: leave }, "All tasks"), h("h1", { tabindex: -1 }, "Set up a lot")),
      h("nav", { "aria-label": "Steps of setting up a lot" }, line),
      heading,
      form,
    ),
    focus: () => heading.focus({ preventScroll: true }),
    back: () => {
      if (draft.step > 0 && draft.done === null) void goTo(draft.step - 1);
      else leave();
    },
    close() {
      isClosed = true;
      steps[draft.step]?.close();
    },
  };
}
