type Attribute = string | number | boolean | undefined | ((event: Event) => void);
export type Child = Node | string | null;

/** An element with attributes, listeners (onclick: …) and children. A text is always text, never markup. */
export function h<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  attributes: Readonly<Record<string, Attribute>> = {},
  ...children: readonly Child[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  for (const [name, value] of Object.entries(attributes)) {
    if (typeof value === "function") element.addEventListener(name.slice(2), value);
    else if (value === true) element.setAttribute(name, "");
    else if (value !== undefined && value !== false) element.setAttribute(name, String(value));
  }
  element.append(...present(children));
  return element;
}

/** Puts other children in the place of those that an element has. */
export const fill = (element: Element, ...children: readonly Child[]): void => element.replaceChildren(...present(children));

const present = (children: readonly Child[]): (Node | string)[] => children.filter((child) => child !== null);

let count = 0;
/** An id that no other element of the page has. */
export const freshId = (what: string): string => `lot-${what}-${++count}`;
