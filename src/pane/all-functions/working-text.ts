import type { Working } from "../../core/expression/working";

/** A working as lines of text, as it is shown and copied. */
export const workingText = ({ title, lines }: Working): string => [title, ...lines.map(({ text }) => text)].join("\n");
