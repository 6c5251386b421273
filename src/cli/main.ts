import { evaluate } from "../engine/evaluate";
import { outcomeText } from "./cell-text";
import { commands } from "./commands";
import { help, helpOf, instead, unknownCommand } from "./help";
import { Misuse } from "./misuse";
import { systemReason } from "./system-reason";

const HELP = ["help", "--help", "-h"];

/** Runs one command and says how it ended: 0 done, 1 something to look at, 2 misuse. */
async function run([first, ...rest]: readonly string[]): Promise<number> {
  if (first === undefined) {
    console.error(help());
    return 2;
  }
  if (first === "--version") {
    console.log(outcomeText(evaluate("=LOT.VERSION()")));
    return 0;
  }
  const [name, ...words] = HELP.includes(first) ? [...rest, "--help"] : [first, ...rest];
  if (name === undefined || HELP.includes(name)) {
    console.log(help());
    return 0;
  }
  const command = commands.get(name);
  if (!command) {
    console.error(`${unknownCommand(name)}\nMore: lotwright --help`);
    return 2;
  }
  if (words.includes("--help") || words.includes("-h")) {
    console.log(helpOf(name, command));
    return 0;
  }
  try {
    return await command.run(words);
  } catch (fault) {
    if (!(fault instanceof Error)) throw fault;
    console.error(fault.message);
    if (fault instanceof Misuse) console.error(`\n${instead(name, command)}`);
    return 2;
  }
}

// Who reads what is printed may have read enough, as head does.
process.stdout.on("error", (fault: NodeJS.ErrnoException) => {
  if (fault.code !== "EPIPE") console.error(`Cannot print how it ended: ${systemReason(fault)}`);
  process.exit(fault.code === "EPIPE" ? 0 : 2);
});

process.exitCode = await run(process.argv.slice(2));
