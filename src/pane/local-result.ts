import type { Notation } from "./notation";

/** What an example shows, as this user's spreadsheet shows it: a number takes the user's decimal sign, a text stays. */
export const localResult = (shows: string, { decimal }: Pick<Notation, "decimal">): string =>
  /^-?\d+\.\d+…?$/.test(shows) ? shows.replace(".", decimal) : shows;
