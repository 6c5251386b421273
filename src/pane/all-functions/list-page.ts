import type { Entry } from "../../catalogue/entry";
import { fill, freshId, h } from "../dom";
import type { Page } from "../page";
import { marked } from "./marked";
import { memory } from "./memory";
import { type Hit, type HitGroup, grouped, search } from "./search";

const TRIES = ["weight", "copper", "payout"] as const;

/** Every function, to be found by its name or by words of the trade. */
export function listPage(entries: readonly Entry[], open: (entry: Entry) => void, leave: () => void, opened: string | null): Page {
  const results = h("div", { class: "lw-results" });
  const count = h("p", { class: "lw-count", role: "status" });
  const input = h("input", { type: "search", id: freshId("search"), autocomplete: "off", spellcheck: "false", placeholder: "how much copper" });
  input.value = memory.query;
  let first: Entry | null = null;

  function find(): void {
    memory.query = input.value;
    const hits = search(entries, input.value);
    const groups = grouped(hits);
    first = groups[0]?.hits[0]?.entry ?? null;
    fill(results, ...(groups.length > 0 ? groups.map((group) => groupOf(group, open)) : [nothingFound(input.value, tryWord)]));
    count.textContent = groups.length === 0 ? "" : hits.length === 1 ? "1 function" : `${hits.length} functions`;
  }
  function tryWord(word: string): void {
    input.value = word;
    find();
    input.focus();
  }
  const rows = (): HTMLElement[] => [...results.querySelectorAll<HTMLElement>(".lw-hit")];
  function onKey(event: KeyboardEvent): void {
    const all = [input as HTMLElement, ...rows()];
    const at = all.findIndex((one) => one === document.activeElement);
    const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 1, End: all.length - 1 }[event.key];
    const isTyping = at === 0 && event.key !== "ArrowDown";
    if (to === undefined || at < 0 || isTyping) {
      if (at === 0) onInputKey(event);
      return;
    }
    event.preventDefault();
    all[Math.max(0, Math.min(to, all.length - 1))]?.focus();
  }
  function onInputKey(event: KeyboardEvent): void {
    if (event.key === "Enter" && first) {
      event.preventDefault();
      open(first);
    } else if (event.key === "Escape" && input.value !== "") {
      event.preventDefault();
      tryWord("");
    }
  }
  input.addEventListener("input", find);
  find();

  return {
    element: h(
      "div",
      { class: "lw-page lw-list", onkeydown: (event) => onKey(event as KeyboardEvent) },
      h("header", { class: "lw-top" }, h("button", { type: "button", class: "lw-back", onclick: leave }, "All tasks"), h("h1", {}, "All functions")),
      h("div", { class: "lw-search", role: "search" }, h("label", { for: input.id }, "Name, or words of the trade"), input, count),
      results,
    ),
    focus() {
      const left = rows().find((row) => row.dataset["id"] === opened);
      (left ?? input).focus();
      left?.scrollIntoView({ block: "center" });
    },
    back: leave,
    close: () => undefined,
  };
}

function groupOf({ title, hits }: HitGroup<Entry>, open: (entry: Entry) => void): HTMLElement {
  const id = freshId("group");
  return h("section", { "aria-labelledby": id }, h("h2", { id }, title), h("ul", { class: "lw-hits" }, ...hits.map((hit) => h("li", {}, row(hit, open)))));
}

function row({ entry, inName, inDescription, by }: Hit<Entry>, open: (entry: Entry) => void): HTMLElement {
  const isShown = inName.length > 0 || inDescription.length > 0;
  return h(
    "button",
    { type: "button", class: "lw-hit", "data-id": entry.id, onclick: () => open(entry) },
    h("span", { class: "lw-name" }, ...marked(entry.name, inName)),
    h("span", { class: "lw-about" }, ...marked(entry.description, inDescription)),
    isShown || by.length === 0 ? null : h("span", { class: "lw-by" }, "found by ", h("mark", {}, by.join(", "))),
  );
}

function nothingFound(query: string, tryWord: (word: string) => void): HTMLElement {
  const words = TRIES.flatMap((word, i) => [i > 0 ? ", " : "", h("button", { type: "button", class: "lw-word", onclick: () => tryWord(word) }, word)]);
  return h("p", { class: "lw-nothing", role: "status" }, `No function for “${query.trim()}”: try `, ...words);
}
