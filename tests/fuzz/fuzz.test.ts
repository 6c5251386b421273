import { expect, it } from "vitest";
import { fuzzSomeFiles } from "./files";
import { fuzzFormulas } from "./formulas";
import { fuzzFunctions } from "./functions";
import { Tally } from "./tally";

/** The long run takes another seed each time; this one must end the same today and tomorrow. */
const SEED = 20261125;
const A_BUSY_MACHINE = 180_000;

async function failures(fuzz: (seed: number, cases: number, tally: Tally) => Promise<void>, cases: number): Promise<unknown> {
  const tally = new Tally();
  await fuzz(SEED, cases, tally);
  expect(tally.cases).toBeGreaterThan(cases);
  return tally.failures.map((failure) => ({ seed: SEED, ...failure }));
}

it("any arguments give a number, a text, a whole spill, or a fault that names the argument", async () => expect(await failures(fuzzFunctions, 300)).toEqual([]), A_BUSY_MACHINE);
it("any text is a formula with an answer, or is refused in a sentence", async () => expect(await failures(fuzzFormulas, 150)).toEqual([]), A_BUSY_MACHINE);
it("a spoiled workbook is computed or refused in a sentence, and leaves nothing half done", async () => expect(await failures(fuzzSomeFiles, 8)).toEqual([]), A_BUSY_MACHINE);
