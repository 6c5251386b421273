import type { Entry } from "./entry";
import { entries } from "./entries";

export const NAMESPACE = "LOT";

export const catalogue: readonly Entry[] = entries;

export const find = (name: string): Entry | undefined => {
  const id = name.toUpperCase().replace(`${NAMESPACE}.`, "");
  return catalogue.find((entry) => entry.id === id);
};
