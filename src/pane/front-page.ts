import { h } from "./dom";
import type { Page, Task } from "./page";

/** What a refiner does, in the refiner's words. The focus is on the task that one comes from; a fault is why it did not open. */
export function frontPage(tasks: readonly Task[], open: (task: Task) => void, from: Task | null, fault: string | null = null): Page {
  const links = tasks.map((task) =>
    h("button", { type: "button", class: "lw-card", onclick: () => open(task) }, h("span", { class: "lw-card-title" }, task.title), h("span", { class: "lw-about" }, task.about)),
  );
  return {
    element: h(
      "div",
      { class: "lw-page lw-front" },
      h("h1", {}, "Lotwright"),
      h("p", { class: "lw-about" }, "Exact silver-refining arithmetic in your own workbook."),
      fault === null ? null : h("p", { class: "lw-fault", role: "alert" }, fault),
      h("h2", {}, "What needs doing?"),
      h("ul", { class: "lw-cards" }, ...links.map((link) => h("li", {}, link))),
    ),
    focus: () => (links[from ? tasks.indexOf(from) : 0] ?? links[0])?.focus(),
    back: () => undefined,
    close: () => undefined,
  };
}
