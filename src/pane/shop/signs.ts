import type { Notation } from "../notation";

/** A sentence or a share such as 97.5% with its decimals as this user writes them. */
export const inSignsOf = (text: string, { decimal }: Pick<Notation, "decimal">): string => text.replace(/(\d)\.(?=\d)/g, `$1${decimal}`);
