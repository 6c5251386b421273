import type { Command } from "./command";
import { evaluate } from "./eval";
import { explain } from "./explain";
import { functions } from "./functions";
import { journal } from "./journal";
import { month } from "./month";
import { native } from "./native";
import { recalc } from "./recalc";
import { reconcile } from "./reconcile";
import { share } from "./share";
import { unshare } from "./unshare";

export const commands: Readonly<Record<string, Command>> = { eval: evaluate, explain, native, functions, recalc, month, reconcile, journal, share, unshare };

export function help(name?: string): string {
  const one = name === undefined ? undefined : commands[name];
  if (one) return one.help;
  return [
    "Lotwright on the command line: the functions of a silver refiner's workbook.",
    "",
    ...Object.values(commands).map(({ help: text }) => `  ${text.split("\n")[0]}`),
    "",
    "lotwright COMMAND --help tells more of each.",
  ].join("\n");
}
