import { type Child, fill, freshId, h } from "../dom";
import { marked } from "./marked";
import { type Findable, type Hit, type HitGroup, grouped, search } from "./search";

const TRIES = ["weight", "copper", "payout"] as const;

/** A search field, and the list of what it finds: the arrow keys walk through both. */
export interface Finder {
  readonly search: HTMLElement;
  readonly results: HTMLElement;
  readonly input: HTMLInputElement;
  rows(): HTMLElement[];
}

export interface Finding<T extends Findable> {
  readonly label: string;
  /** Where what is asked is kept, and found again. */
  readonly memory: { query: string };
  /** A function in the list, which goes there: a button or a link. */
  row(hit: Hit<T>): HTMLElement;
  /** What the Enter key in the field does with the best hit. */
  choose(entry: T): void;
}

export function finder<T extends Findable>(entries: readonly T[], { label, memory, row, choose }: Finding<T>): Finder {
  const results = h("div", { class: "lw-results" });
  const count = h("p", { class: "lw-count", role: "status" });
  const input = h("input", { type: "search", id: freshId("search"), autocomplete: "off", spellcheck: "false", placeholder: "how much copper" });
  input.value = memory.query;
  let first: T | null = null;

  function find(): void {
    memory.query = input.value;
    const hits = search(entries, input.value);
    const groups = grouped(hits);
    first = groups[0]?.hits[0]?.entry ?? null;
    fill(results, ...(groups.length > 0 ? groups.map((group) => groupOf(group, row)) : [nothingFound(input.value, tryWord)]));
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
      choose(first);
    } else if (event.key === "Escape" && input.value !== "") {
      event.preventDefault();
      tryWord("");
    }
  }
  input.addEventListener("input", find);
  input.addEventListener("keydown", onKey);
  results.addEventListener("keydown", onKey);
  find();
  return { search: h("div", { class: "lw-search", role: "search" }, h("label", { for: input.id }, label), input, count), results, input, rows };
}

function groupOf<T extends Findable>({ title, hits }: HitGroup<T>, row: Finding<T>["row"]): HTMLElement {
  const id = freshId("group");
  return h("section", { "aria-labelledby": id }, h("h2", { id }, title), h("ul", { class: "lw-hits" }, ...hits.map((hit) => h("li", {}, row(hit)))));
}

/** What a row says: the name, what the function does, and the words that found it where neither shows them. */
export function hitParts({ entry, inName, inDescription, by }: Hit): Child[] {
  const isShown = inName.length > 0 || inDescription.length > 0;
  return [
    h("span", { class: "lw-name" }, ...marked(entry.name, inName)),
    h("span", { class: "lw-about" }, ...marked(entry.description, inDescription)),
    isShown || by.length === 0 ? null : h("span", { class: "lw-by" }, "found by ", h("mark", {}, by.join(", "))),
  ];
}

function nothingFound(query: string, tryWord: (word: string) => void): HTMLElement {
  const words = TRIES.flatMap((word, i) => [i > 0 ? ", " : "", h("button", { type: "button", class: "lw-word", onclick: () => tryWord(word) }, word)]);
  return h("p", { class: "lw-nothing", role: "status" }, `No function for “${query.trim()}”: try `, ...words);
}
