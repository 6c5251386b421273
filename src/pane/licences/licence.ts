/** A package that comes with the page. */
export interface Licence {
  readonly name: string;
  readonly version: string;
  /** As its package says, in the signs of SPDX: MIT, LGPL-3.0-or-later. */
  readonly licence: string;
  /** What its licence asks to be told: where its source is, how it may be replaced. */
  readonly notice: string | null;
  /** The whole text. */
  readonly text: string;
}

/** Beside the page, written when it is built: a module whose default export is the list, and the same to be read. */
export const LICENCE_FILES = { module: "licences.js", text: "licences.txt" } as const;
