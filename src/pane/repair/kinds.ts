/** What can be wrong with a cell that holds a formula of ours. The first are repaired, the others are told. */
export type FindingKind = "near" | "text" | "prefix" | "at" | "letters" | "anew" | "busy" | "stale" | "unknown" | "name" | "value" | "missing" | "other";

interface KindWords {
  readonly title: string;
  /** What it means, and what to do. */
  readonly about: string;
  /** One tick for all of them; without it each cell has its own, since each is a question. */
  readonly tick?: string;
}

/** In the order in which they are shown. */
export const KINDS: Readonly<Record<FindingKind, KindWords>> = {
  near: { title: "Names much like ours", about: "Lotwright has no function of this name, and one that is much like it. Tick each that was meant." },
  text: { title: "Formulas kept as texts", about: "The cell shows the formula and not its result: it was typed after an apostrophe, or into a cell formatted as text. Leave out what is meant to be read." },
  prefix: { title: "Something before the name", about: "A file keeps our names behind a prefix, and a program without Lotwright takes it for a part of the name. Without it the formula computes.", tick: "Take the prefixes away" },
  at: { title: "An @ before the name", about: "Older programs write it, and not every spreadsheet reads it. It means the first cell of a result: that stays so.", tick: "Take the @ away" },
  letters: { title: "Names in small letters", about: "They were typed where nobody knew the name. In capitals every program finds it.", tick: "Write the names in capitals" },
  anew: { title: "#NAME? though the name is right", about: "The formula was read before Lotwright was there. Written again as it is, it is taken anew.", tick: "Write these formulas again" },
  busy: { title: "Still being computed", about: "#BUSY! and #GETTING_DATA go by themselves after a moment. Where they stay, writing the formula again asks anew.", tick: "Write these formulas again" },
  stale: { title: "An error, though its numbers compute", about: "What the formula reads has been mended, and it was not computed since.", tick: "Write these formulas again" },
  unknown: { title: "Names that are none of ours", about: "Look for the right one under All functions, and type it into the cell." },
  name: { title: "#NAME? for something else", about: "Our names are right here: another name in the formula is not known to this spreadsheet." },
  value: { title: "#VALUE!", about: "Each says which argument it is, what it was and what to write. Mend that in the sheet; nothing is changed here." },
  missing: { title: "#N/A", about: "A name that no table holds, or something that is still to come: that mends itself when it is filled in." },
  other: { title: "Other errors", about: "They come from what stands around our functions, or from the room that a result needs." },
};
