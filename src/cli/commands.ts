import type { Command } from "./command";
import { evaluate } from "./eval";
import { explain } from "./explain";
import { functions } from "./functions";
import { native } from "./native";
import { recalc } from "./recalc";


export const commands: Readonly<Record<string, Command>> = { eval: evaluate, explain, native, functions, recalc };

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
