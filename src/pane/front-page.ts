import { h } from "./dom";
import type { Page, Task } from "./page";

/** What a refiner does, in the refiner's words. */
export function frontPage(tasks: readonly Task[], open: (task: Task) => void): Page {
  const links = tasks.map((task) =>
    h("button", { type: "button", class: "card", onclick: () => open(task) }, h("span", { class: "card-title" }, task.title), h("span", { class: "about" }, task.about)),
  );
  return {
    element: h(
      "main",
      { class: "page front" },
      h("h1", {}, "Lotwright"),
      h("p", { class: "about" }, "Exact silver-refining arithmetic in your own workbook."),
      h("h2", {}, "What needs doing?"),
      h("ul", { class: "cards" }, ...links.map((link) => h("li", {}, link))),
    ),
    focus: () => links[0]?.focus(),
    back: () => undefined,
    close: () => undefined,
  };
}
