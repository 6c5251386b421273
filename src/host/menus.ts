import { registries } from "@odoo/o-spreadsheet";

/** What the grid's menus still offer: only what a saved file can hold. */
const KEPT: ReadonlySet<string> = new Set(["cut", "copy", "paste", "paste_special", "clear_row", "clear_column"]);

/** The grid's own menus at the top, which a keyboard cannot reach, give way to our bar. */
export function pruneMenus(): void {
  const { cellMenuRegistry, rowMenuRegistry, colMenuRegistry, topbarMenuRegistry } = registries;
  for (const registry of [cellMenuRegistry, rowMenuRegistry, colMenuRegistry])
    for (const key of registry.getKeys()) if (!KEPT.has(key)) registry.remove(key);
  for (const key of topbarMenuRegistry.getKeys()) topbarMenuRegistry.remove(key);
}
