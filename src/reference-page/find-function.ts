import { type Finder, finder, hitParts } from "../pane/all-functions/finder";
import { h } from "../pane/dom";
import { functionsOn } from "./functions-on";

/** The search, and the list that leads to the functions. On a narrow page the list opens over the page while one searches. */
export function findFunction(): void {
  const panel = document.querySelector(".finder") as HTMLElement;
  const found = finder(functionsOn(document), {
    label: "Find a function",
    memory: { query: "" },
    row: (hit) => marked(h("a", { class: "lw-hit", href: `#${hit.entry.id}` }, ...hitParts(hit))),
    choose: ({ id }) => rowOf(id)?.click(),
  });
  const rowOf = (id: string): HTMLElement | undefined => found.rows().find((row) => row.getAttribute("href") === `#${id}`);

  function open(): void {
    panel.dataset["open"] = "";
  }
  function close(): void {
    delete panel.dataset["open"];
  }

  panel.querySelector(".search")?.replaceChildren(found.search);
  panel.querySelector(".results")?.replaceChildren(found.results);
  found.input.setAttribute("aria-keyshortcuts", "/");
  found.input.addEventListener("focus", open);
  found.input.addEventListener("input", open);
  found.results.addEventListener("click", (event) => {
    const row = (event.target as Element).closest<HTMLAnchorElement>("a.lw-hit");
    if (!row) return;
    close();
    // Reading goes on at the function.
    setTimeout(() => document.getElementById(row.hash.slice(1))?.querySelector("h3")?.focus({ preventScroll: true }));
  });
  document.addEventListener("pointerdown", ({ target }) => {
    if (!panel.contains(target as Node)) close();
  });
  document.addEventListener("focusin", ({ target }) => {
    if (!panel.contains(target as Node)) close();
  });
  document.addEventListener("keydown", (event) => onKey(event, found, close));
  window.addEventListener("hashchange", () => found.rows().forEach(marked));
}

/** The function that is read stands out in the list. */
function marked(row: HTMLElement): HTMLElement {
  if (row.getAttribute("href") === location.hash) row.setAttribute("aria-current", "true");
  else row.removeAttribute("aria-current");
  return row;
}

/** The find command of the browser stays the browser's: all that is on the page stands on it in words. */
function onKey(event: KeyboardEvent, { input, results }: Finder, close: () => void): void {
  const isTyping = event.target instanceof HTMLInputElement && event.target.type !== "radio";
  if (event.key === "/" && !isTyping && !event.ctrlKey && !event.metaKey && !event.altKey) {
    event.preventDefault();
    input.focus();
    input.select();
  } else if (event.key === "Escape" && !event.defaultPrevented) {
    if (results.contains(document.activeElement)) input.focus();
    else close();
  }
}
