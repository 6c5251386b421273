import { commands } from "../../src/cli/commands";
import type { Ended } from "./command-runner";

/** Runs one command after another, each as the command line does, and tells how it ended. */
process.on("message", (words: readonly string[]) => void run(words).then((ended) => process.send?.(ended)));

async function run([name = "", ...words]: readonly string[]): Promise<Ended> {
  const said: string[] = [];
  Object.assign(console, { log: (line: unknown) => void said.push(String(line)), error: (line: unknown) => void said.push(String(line)) });
  try {
    const code = await commands.get(name)?.run(words);
    return { code: code ?? 2, said: said.join("\n").slice(0, LONGEST), broken: null };
  } catch (thrown) {
    if (!(thrown instanceof Error)) return { code: 2, said: "", broken: `threw ${String(thrown)}` };
    return { code: 2, said: thrown.message.slice(0, LONGEST), broken: isTold(thrown) ? null : (thrown.stack ?? thrown.message) };
  }
}
const LONGEST = 20_000;

/** What a command throws on purpose is said in a sentence; these come from the language when a line of ours is wrong. */
const isTold = (thrown: Error): boolean => ![TypeError, RangeError, ReferenceError, SyntaxError, EvalError].some((kind) => thrown instanceof kind);
