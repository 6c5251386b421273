import { copyFileSync, existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { manifestFaults } from "../../manifest/check";
import { DEVELOPMENT_BASE, excelFiles, inRepository, packageVersion } from "./excel-files";
import { withHelpAddresses } from "./help-addresses";

/** Puts beside the bundle what is served with it, metadata and a manifest that point to `base`; throws what is wrong with that. */
export function fillExcelFolder(folder: string, base: string): void {
  for (const [name, source] of Object.entries(excelFiles)) copyFileSync(inRepository(source), join(folder, name));
  const metadata = join(folder, "functions.json");
  writeFileSync(metadata, withHelpAddresses(readFileSync(metadata, "utf8"), base));
  const manifest = readFileSync(inRepository("manifest/manifest.xml"), "utf8").replaceAll(`"${DEVELOPMENT_BASE}`, `"${inAttribute(base)}`);
  writeFileSync(join(folder, "manifest.xml"), manifest);
  const faults = manifestFaults(manifest, { version: packageVersion(), base, file: (name) => fileIn(folder, name) });
  if (faults.length > 0) throw new Error(`The manifest is not good:\n${faults.join("\n")}`);
}

const inAttribute = (address: string): string => address.replaceAll("&", "&amp;");

function fileIn(folder: string, name: string): Uint8Array | null {
  const path = join(folder, name);
  return /^[\w.-]+$/.test(name) && existsSync(path) ? readFileSync(path) : null;
}
