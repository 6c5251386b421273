import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import type { Licence } from "../../pane/licences/licence";
import { inRepository } from "../excel-files";
import type { Package } from "./package-of";

/** What is told of a package; `files` are the names under which its files lie beside the page as they came. */
export function licenceOf({ folder, name, version, licence, source }: Package, files: readonly string[]): Licence {
  const isLesser = /^LGPL-3\.0/.test(licence);
  if (isLesser && files.length === 0) throw new Error(`Cannot ship ${name} inside a bundle: it is under ${licence}, and must stay a file of its own that may be replaced`);
  return { name, version, licence, notice: isLesser ? lesserNotice(name, version, source, files) : null, text: textIn(folder, name) };
}

export const ownLicence = (): Licence => {
  const { version } = JSON.parse(readFileSync(inRepository("package.json"), "utf8")) as { version: string };
  return { name: "Lotwright", version, licence: "MIT", notice: null, text: readFileSync(inRepository("LICENSE"), "utf8") };
};

/** What the licence asks of a work that uses the library: sections 4 a to 4 e of the LGPL. */
const lesserNotice = (name: string, version: string, source: string | null, files: readonly string[]): string =>
  [
    `This page uses ${name}, which is covered by the GNU Lesser General Public License, version 3. Its text, and that of the GNU General Public License which it adds to, stand below.`,
    `It comes as it was published, in files of its own: ${files.filter((file) => !/licen[cs]e/i.test(file)).join(", ")}. You may put another version in their place, your own included: replace these files under the same names in the folder that the page is served from (dist/host), and load the page again. Or install that version with npm, and npm start builds the page anew with it.`,
    `You may take the page apart to find a fault in such a version. Source of version ${version}: ${source ?? "see its package"}.`,
  ].join("\n\n");

function textIn(folder: string, name: string): string {
  const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
  if (file !== undefined) return readFileSync(join(folder, file), "utf8").trim();
  const told = WITHOUT_TEXT[name];
  if (!told) throw new Error(`Cannot ship ${name}: its package brings no text of its licence`);
  return told().trim();
}

const standard = (name: string): string => readFileSync(inRepository(`src/build/licences/${name}.txt`), "utf8");

/** Packages that name their licences and do not bring the texts, with the owner that their files name. */
const WITHOUT_TEXT: Readonly<Record<string, () => string>> = {
  "font-awesome": () => `Copyright Dave Gandy 2016. All rights reserved.\n\nThe font, under the SIL Open Font License 1.1:\n\n${standard("OFL-1.1")}\n\nThe style sheet, under the MIT License:\n\nMIT License\n\nCopyright (c) 2016 Dave Gandy\n\n${standard("MIT")}`,
};
