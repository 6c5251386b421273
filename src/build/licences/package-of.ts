import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";

export interface Package {
  readonly folder: string;
  readonly name: string;
  readonly version: string;
  readonly licence: string;
  /** Where its source is kept, as an address to open; null where it does not say. */
  readonly source: string | null;
}

interface Told {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly repository?: string | { readonly url: string };
}

/** The installed package that a file belongs to; null for a file of our own. */
export function packageOf(path: string): Package | null {
  const [, folder] = /^(.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+)[\\/]/s.exec(path) ?? [];
  return folder !== undefined && existsSync(join(folder, "package.json")) ? packageIn(folder) : null;
}

export function packageIn(folder: string): Package {
  const { name, version, license, repository } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8")) as Told;
  if (license === undefined) throw new Error(`Cannot ship ${name}: its package names no licence`);
  const address = typeof repository === "string" ? repository : repository?.url;
  return { folder, name, version, licence: license.replace(/^\((.*)\)$/, "$1"), source: address?.replace(/^git\+/, "").replace(/\.git$/, "") ?? null };
}
