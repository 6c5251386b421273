import { CorePlugin, type Model, coreTypes, registries } from "@odoo/o-spreadsheet";

/** Remembers, in step with the grid's undo, what the grid has no place for and a saved file has; null forgets it. */
export interface Keep {
  readonly type: typeof KEEP;
  readonly id: string;
  /** A function, since the grid copies anything else that a command holds, and cannot copy the bytes of a picture. */
  readonly kept: (() => unknown) | null;
}

export const KEEP = "LOT_KEEP";

/** What is kept now, by its ids, in the order in which it came. */
export const keptIn = (model: Model): ReadonlyMap<string, unknown> =>
  new Map((model.getters as unknown as { getLotKept(): Kept["items"] }).getLotKept());

export function registerKept(): void {
  if (registries.corePluginRegistry.contains(KEEP)) return;
  (coreTypes as Set<string>).add(KEEP);
  registries.corePluginRegistry.add(KEEP, Kept);
  // The grid asks what takes a command back only to set others' commands right, and here there are no others.
  registries.inverseCommandRegistry.add(KEEP, (command) => [command]);
}

class Kept extends CorePlugin {
  static override getters = ["getLotKept"] as const as never;
  items: readonly (readonly [id: string, kept: unknown])[] = [];

  getLotKept(): Kept["items"] {
    return this.items;
  }

  override handle(command: unknown): void {
    const { type, id, kept } = command as Keep;
    if (type !== KEEP) return;
    const others = this.items.filter(([one]) => one !== id);
    (this.history.update as unknown as (name: "items", value: Kept["items"]) => void)("items", kept === null ? others : [...others, [id, kept()]]);
  }
}
