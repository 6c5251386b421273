import { calls } from "./calls";
import type { Entry } from "./entry";
import { texts } from "./entries";

export const NAMESPACE = "LOT";

/** Every cell function with its words: what help, pane and command line show. */
export const catalogue: readonly Entry[] = texts.map((text) => {
  const call = calls[text.id];
  if (!call) throw new Error(`${text.id} has no function`);
  return { ...text, ...call };
});

/** By id or by name in a cell, in any case. */
export function find(name: string): Entry | undefined {
  const id = name.toUpperCase().replace(`${NAMESPACE}.`, "");
  return catalogue.find((entry) => entry.id === id);
}
