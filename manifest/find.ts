import { type Element, walk } from "./xml";

export const all = (root: Element, name: string): readonly Element[] =>
  [...walk(root)].map(([element]) => element).filter((element) => element.name === name);

export const find = (root: Element, name: string): Element | undefined => all(root, name)[0];

/** The value that the first element of a name gives. */
export const value = (root: Element, name: string): string => find(root, name)?.attributes["DefaultValue"] ?? "";

export const LISTS = ["bt:Images", "bt:Urls", "bt:ShortStrings", "bt:LongStrings"];

/** What an element's resid stands for. */
export function resource(root: Element, element: Element | undefined): string {
  const resid = element?.attributes["resid"];
  const found = LISTS.flatMap((list) => find(root, list)?.children ?? []).find(({ attributes }) => attributes["id"] === resid);
  return found?.attributes["DefaultValue"] ?? "";
}

export const twice = (ids: readonly string[]): readonly string[] => [...new Set(ids.filter((id, i) => ids.indexOf(id) !== i))];
