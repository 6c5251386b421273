import { nearest } from "../formulas/nearest";
import type { Command } from "./command";
import { commands } from "./commands";

/** What `lotwright --help` prints. */
export function help(): string {
  const lines = [...commands].map(([name, { does }]) => `  ${name.padEnd(11)}${does}`);
  const [some = ""] = commands.get("eval")?.examples ?? [];
  return `Lotwright on the command line: the functions of a silver refiner's workbook.

${lines.join("\n")}

Such as
    ${some}

lotwright COMMAND --help tells the rest of a command, with examples. lotwright --version says what computes.
In this folder, write npm run -s lotwright -- before the command. On Windows' cmd, put a formula in double quotes and
double those within: "=LOT.COPPER(10,""lb"")".

Ends with 0 when all is well; with 1 when there is something to look at: an error in what was computed, a difference, a
contradiction; with 2 when the command was not understood or a file could not be used. Only the files that a command is
told to write are written, and none that is there already is replaced without --force.`;
}

/** What `lotwright COMMAND --help` prints. */
export function helpOf(name: string, { takes, does, examples, more, endsWithOne }: Command): string {
  return `${usage(name, takes)}
${does.charAt(0).toUpperCase()}${does.slice(1)}.

Examples
${examples.map((line) => `    ${line}`).join("\n")}

${more}

Ends with
  0  when done${endsWithOne === null ? "" : `\n  1  ${endsWithOne}`}
  2  when the command was not understood, or a file could not be used`;
}

/** What to write instead, after a command that could not be used. */
export const instead = (name: string, { takes, examples: [first = ""] }: Command): string =>
  `Write: ${usage(name, takes)}\nSuch as: ${first}\nMore: lotwright ${name} --help`;

export function unknownCommand(name: string): string {
  const meant = nearest(name, [...commands.keys()]);
  return `There is no command "${name}": ${meant ? `did you mean ${meant}` : `write one of ${[...commands.keys()].join(", ")}`}`;
}

const usage = (name: string, takes: string): string => `lotwright ${name} ${takes}`;
