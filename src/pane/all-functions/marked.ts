import { type Child, h } from "../dom";
import type { Span } from "./search";

/** A text with what the search hit in it marked. */
export function marked(text: string, spans: readonly Span[]): Child[] {
  const children: Child[] = [];
  let at = 0;
  for (const [start, end] of spans) {
    children.push(text.slice(at, start), h("mark", {}, text.slice(start, end)));
    at = end;
  }
  return [...children, text.slice(at)];
}
