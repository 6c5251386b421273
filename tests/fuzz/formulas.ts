import { random } from "../random";
import { CommandRunner, type Ended } from "./command-runner";
import { formulaText } from "./formula-text";
import { smallerTexts, smallest } from "./smallest";
import type { Tally } from "./tally";

const COMMANDS = ["eval", "explain", "native"] as const;

/** Arbitrary text for each command that takes a formula. */
export async function fuzzFormulas(seed: number, cases: number, tally: Tally): Promise<void> {
  const runner = new CommandRunner();
  for (const [n, command] of COMMANDS.entries()) {
    const r = random(seed + n);
    for (let i = 0; i < cases; i++) {
      const text = formulaText(r);
      const ended = await runner.run([command, text]);
      const broken = brokenIn(ended);
      if (broken === null) tally.count(command, ENDINGS[ended.code] ?? `code ${ended.code}`);
      else {
        const least = await smallest(text, smallerTexts, async (shorter) => brokenIn(await runner.run([command, shorter])) !== null, 200);
        tally.fail({ what: command, input: JSON.stringify(least).slice(0, 1000), broken: brokenIn(await runner.run([command, least])) ?? broken });
      }
    }
  }
  runner.stop();
}

const ENDINGS: Readonly<Record<number, string>> = { 0: "answered", 1: "an error in a sentence", 2: "refused in a sentence" };

/** What of an ending no user should see. */
export function brokenIn({ code, said, broken }: Ended): string | null {
  if (broken !== null) return broken;
  if (code !== 0 && said.trim() === "") return "no sentence";
  const odd = /the fault is in Lotwright|does not manage|Maximum call stack|is not a function|Cannot read propert|\[object |^\s+at .*:\d+/m.exec(said);
  return odd ? `said ${said.slice(Math.max(0, odd.index - 100), odd.index + 200)}` : null;
}
