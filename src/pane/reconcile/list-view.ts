import { type Contradiction, type ContradictionKind, KIND_TITLES } from "../../lots/reconcile";
import { fill, freshId, h } from "../dom";
import { type Memory, keyOf } from "./memory";

export interface ListView {
  readonly element: HTMLElement;
  show(contradictions: readonly Contradiction[]): void;
}

/** More at one time would be no list that anyone works through. */
const AT_ONCE = 40;

/** Contradictions by their kinds: arrow keys move through them, Enter goes to the cell. */
export function listView(memory: Memory, go: (one: Contradiction) => void): ListView {
  const element = h("div", { class: "lw-contradictions", onkeydown: (event) => onKey(event as KeyboardEvent), onfocusin: (event) => stand(event.target) });
  const items = (): HTMLElement[] => [...element.querySelectorAll<HTMLElement>("button")];

  /** One of them is reached by Tab, so that the way past the list is short. */
  function stand(on: EventTarget | null): void {
    const all = items();
    if (!all.some((one) => one === on)) return;
    for (const one of all) one.tabIndex = one === on ? 0 : -1;
  }
  function onKey(event: KeyboardEvent): void {
    const all = items();
    const at = all.findIndex((one) => one === document.activeElement);
    const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 0, End: all.length - 1 }[event.key];
    if (at < 0 || to === undefined || event.altKey || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    all[Math.max(0, Math.min(to, all.length - 1))]?.focus();
  }
  function itemOf(one: Contradiction): HTMLElement {
    const { lot, cell, heading, sentence } = one;
    const button = h(
      "button",
      { type: "button", class: "lw-contradiction", tabindex: -1, "data-key": keyOf(one), onclick: () => gone(one) },
      h("span", { class: "lw-where" }, h("span", { class: "lw-address" }, cell), h("span", {}, heading), h("span", { class: "lw-lot" }, lot)),
      h("span", { class: "lw-sentence" }, sentence),
    );
    mark(button, one);
    return h("li", {}, button);
  }
  function mark(button: HTMLElement, one: Contradiction): void {
    button.classList.toggle("lw-seen", memory.seen.has(keyOf(one)));
    if (memory.last === keyOf(one)) button.setAttribute("aria-current", "true");
    else button.removeAttribute("aria-current");
  }
  function gone(one: Contradiction): void {
    memory.seen.add(keyOf(one));
    memory.last = keyOf(one);
    for (const button of items()) button.removeAttribute("aria-current");
    const button = items().find(({ dataset }) => dataset["key"] === keyOf(one));
    if (button) mark(button, one);
    go(one);
  }
  function groupOf(kind: ContradictionKind, all: readonly Contradiction[]): HTMLElement {
    const id = freshId("kind");
    const list = h("ul", {});
    const more = h("button", { type: "button", class: "lw-quiet", tabindex: -1, onclick: () => showMore() });
    let shown = 0;
    const showMore = (): void => {
      const next = all.slice(shown, shown + AT_ONCE).map(itemOf);
      shown += next.length;
      list.append(...next);
      more.hidden = shown >= all.length;
      more.textContent = `Show ${Math.min(AT_ONCE, all.length - shown)} more of ${all.length}`;
      if (shown > next.length) next[0]?.querySelector("button")?.focus();
    };
    showMore();
    return h("section", { "aria-labelledby": id }, h("h2", { id }, `${KIND_TITLES[kind]} (${all.length})`), list, more.hidden ? null : more);
  }
  return {
    element,
    show(contradictions) {
      const kinds = [...new Set(contradictions.map(({ kind }) => kind))];
      fill(element, ...kinds.map((kind) => groupOf(kind, contradictions.filter((one) => one.kind === kind))));
      const all = items();
      stand(all.find((one) => one.hasAttribute("aria-current")) ?? all[0] ?? null);
    },
  };
}
