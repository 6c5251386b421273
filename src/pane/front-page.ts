import { firstLotCard } from "./first-lot/card";
import { h } from "./dom";
import type { Page, Task } from "./page";

/** What is listed on the front page. */
export interface FrontTasks {
  readonly tasks: readonly Task[];
  /** Offered to those who are new, and at the foot from then on. */
  readonly first: Task;
  /** What stands at the foot: about the product, and none of the refiner's work. */
  readonly foot: readonly Task[];
}

/** What a refiner does, in the refiner's words. The focus is on the task that one comes from; a fault is why it did not open. */
export function frontPage({ tasks, first, foot }: FrontTasks, open: (task: Task) => void, from: Task | null, fault: string | null = null): Page {
  const buttons = new Map(tasks.map((task) => [task, h("button", { type: "button", class: "lw-card", onclick: () => open(task) }, h("span", { class: "lw-card-title" }, task.title), h("span", { class: "lw-about" }, task.about))]));
  const links = new Map([first, ...foot].map((task) => [task, h("button", { type: "button", class: "lw-quiet", onclick: () => open(task) }, task.title)]));
  const focus = (): void => ((from && (buttons.get(from) ?? links.get(from))) ?? [...buttons.values()][0])?.focus();
  return {
    element: h(
      "div",
      { class: "lw-page lw-front" },
      h("h1", {}, "Lotwright"),
      h("p", { class: "lw-about" }, "Exact silver-refining arithmetic in your own workbook."),
      fault === null ? null : h("p", { class: "lw-fault", role: "alert" }, fault),
      firstLotCard(() => open(first), focus),
      h("h2", {}, "What needs doing?"),
      h("ul", { class: "lw-cards" }, ...[...buttons.values()].map((button) => h("li", {}, button))),
      h("ul", { class: "lw-foot", "aria-label": "About Lotwright" }, ...[...links.values()].map((link) => h("li", {}, link))),
    ),
    focus,
    back: () => undefined,
    close: () => undefined,
  };
}
