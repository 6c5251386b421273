import { fill, freshId, h } from "./dom";

/** A cell that something is said of. */
export interface ListedPlace {
  /** Tells it from all others: what is said anew is new again. */
  readonly key: string;
  readonly address: string;
  readonly heading: string;
  /** At the other end of the line. */
  readonly beside: string;
  readonly sentence: string;
}

export interface PlaceGroup<P extends ListedPlace> {
  readonly title: string;
  readonly about?: string;
  readonly places: readonly P[];
}

/** Kept by a task, so that a pane that is closed opens again where it was. */
export interface PlaceMemory {
  /** Those that were gone to. */
  readonly seen: Set<string>;
  last: string | null;
}

export interface PlaceList<P extends ListedPlace> {
  readonly element: HTMLElement;
  show(groups: readonly PlaceGroup<P>[]): void;
}

/** More at one time would be no list that anyone works through. */
const AT_ONCE = 40;

/** Cells by their groups: arrow keys move through them, Enter goes to the cell. */
export function placeList<P extends ListedPlace>(memory: PlaceMemory, go: (one: P) => void): PlaceList<P> {
  const element = h("div", { class: "lw-places", onkeydown: (event) => onKey(event as KeyboardEvent), onfocusin: (event) => stand(event.target) });
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
  function itemOf(one: P): HTMLElement {
    const { key, address, heading, beside, sentence } = one;
    const button = h(
      "button",
      { type: "button", class: "lw-place", tabindex: -1, "data-key": key, onclick: () => gone(one) },
      h("span", { class: "lw-where" }, h("span", { class: "lw-address" }, address), h("span", {}, heading), h("span", { class: "lw-beside" }, beside)),
      h("span", { class: "lw-sentence" }, sentence),
    );
    mark(button, key);
    return h("li", {}, button);
  }
  function mark(button: HTMLElement, key: string): void {
    button.classList.toggle("lw-seen", memory.seen.has(key));
    if (memory.last === key) button.setAttribute("aria-current", "true");
    else button.removeAttribute("aria-current");
  }
  function gone(one: P): void {
    memory.seen.add(one.key);
    memory.last = one.key;
    for (const button of items()) button.removeAttribute("aria-current");
    const button = items().find(({ dataset }) => dataset["key"] === one.key);
    if (button) mark(button, one.key);
    go(one);
  }
  function groupOf({ title, about, places }: PlaceGroup<P>): HTMLElement {
    const id = freshId("kind");
    const list = h("ul", {});
    const more = h("button", { type: "button", class: "lw-quiet", tabindex: -1, onclick: () => showMore() });
    let shown = 0;
    const showMore = (): void => {
      const next = places.slice(shown, shown + AT_ONCE).map(itemOf);
      shown += next.length;
      list.append(...next);
      more.hidden = shown >= places.length;
      more.textContent = `Show ${Math.min(AT_ONCE, places.length - shown)} more of ${places.length}`;
      if (shown > next.length) next[0]?.querySelector("button")?.focus();
    };
    showMore();
    const lead = about === undefined ? null : h("p", { class: "lw-about" }, about);
    return h("section", { "aria-labelledby": id }, h("h2", { id }, `${title} (${places.length})`), lead, list, more.hidden ? null : more);
  }
  return {
    element,
    show(groups) {
      fill(element, ...groups.map(groupOf));
      const all = items();
      stand(all.find((one) => one.hasAttribute("aria-current")) ?? all[0] ?? null);
    },
  };
}
