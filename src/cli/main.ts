import { commands, help } from "./commands";
import { Misuse } from "./misuse";

/** Runs one command and says how it ended: 0 done, 1 an error in what was computed, 2 misuse. */
async function run([name, ...words]: readonly string[]): Promise<number> {
  if (name === undefined || name === "--help" || name === "-h" || name === "help") {
    console.log(help(words[0]));
    return name === undefined ? 2 : 0;
  }
  const command = commands[name];
  if (!command) {
    console.error(`There is no command "${name}". ${help()}`);
    return 2;
  }
  if (words.includes("--help")) {
    console.log(command.help);
    return 0;
  }
  try {
    return await command.run(words);
  } catch (fault) {
    if (!(fault instanceof Error)) throw fault;
    console.error(fault.message);
    if (fault instanceof Misuse) console.error(`\n${command.help}`);
    return 2;
  }
}

process.exitCode = await run(process.argv.slice(2));
