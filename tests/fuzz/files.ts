import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { FileFault, openXlsx } from "../../src/workbook/file";
import { random } from "../random";
import { bombs } from "./bombs";
import { CommandRunner, type Ended } from "./command-runner";
import { brokenIn } from "./formulas";
import { hostileFiles } from "./hostile-files";
import { spoiled } from "./spoiled-files";
import type { Tally } from "./tally";

const COMMANDS: Readonly<Record<string, (input: string, output: string) => readonly string[]>> = {
  recalc: (input, output) => ["recalc", input, "--write", output],
  share: (input, output) => ["share", input, output],
  unshare: (input, output) => ["unshare", input, output],
  month: (input, output) => ["month", input, output, "--month", "2025-12", "--stock", `${input}.csv`, "--scale", "0.5g", "--assay", "1", "--bias", "0", "--opening", "100", "--opening-uncertainty", "0.3"],
  journal: (input, output) => ["journal", input, output],
  reconcile: (input) => ["reconcile", input],
};
/** These take any workbook; the others one that knows where its lots live. */
const OF_ANY = ["recalc", "share", "unshare"];

const sample = (name: string): Uint8Array => new Uint8Array(readFileSync(new URL(`../../sample-workbooks/${name}.xlsx`, import.meta.url)));

/** Hostile files, bombs, and so many spoiled samples: each is computed or refused in a sentence, and leaves nothing half done. */
export async function fuzzFiles(seed: number, cases: number, tally: Tally): Promise<void> {
  const trial = new Trial(tally);
  for (const [name, make] of Object.entries({ ...hostileFiles, ...bombs })) for (const command of OF_ANY) await trial.run(command, make(), name);
  await spoiledFiles(trial, seed, cases);
  trial.end();
}

/** The same without the files that take a while. */
export async function fuzzSomeFiles(seed: number, cases: number, tally: Tally): Promise<void> {
  const trial = new Trial(tally);
  for (const [name, make] of Object.entries(hostileFiles)) if (!SLOW.includes(name)) await trial.run("share", make(), name);
  await spoiledFiles(trial, seed, cases);
  trial.end();
}
const SLOW = ["a cell in the last row", "200 sheets", "a chain of ten thousand cells", "a chain of ten thousand cells, the last one first"];

async function spoiledFiles(trial: Trial, seed: number, cases: number): Promise<void> {
  const [costSheet, quotes, throughput] = [sample("cost-sheet"), sample("quotes"), sample("throughput")];
  // A year of lots takes a second to read, so it comes less often.
  const samples = { any: [costSheet, quotes], withLots: [quotes, quotes, quotes, quotes, throughput] };
  for (const [n, command] of Object.keys(COMMANDS).entries()) {
    const r = random(seed + n);
    for (let i = 0; i < cases; i++) await trial.run(command, spoiled(r, r.pick(OF_ANY.includes(command) ? samples.any : samples.withLots)), `spoiled file ${i} of seed ${seed}`);
  }
}

/** A folder in which commands are tried, one file after the other. */
class Trial {
  readonly #folder = mkdtempSync(join(tmpdir(), "lotwright-fuzz-"));
  readonly #runner = new CommandRunner();
  readonly #input = join(this.#folder, "in.xlsx");
  readonly #output = join(this.#folder, "out.xlsx");

  constructor(private readonly tally: Tally) {
    writeFileSync(`${this.#input}.csv`, "kind,what,weight,unit,fineness\ncounted,Crystal,21000,g,999.9\n");
  }

  async run(command: string, bytes: Uint8Array, name: string): Promise<void> {
    writeFileSync(this.#input, bytes);
    const ended = await this.#runner.run(COMMANDS[command]?.(this.#input, this.#output) ?? [], SECONDS);
    const broken = brokenIn(ended) ?? this.#leftBehind(command, ended);
    rmSync(this.#output, { force: true });
    if (broken === null) this.tally.count(command, ENDINGS[ended.code] ?? `code ${ended.code}`);
    else this.tally.fail({ what: command, input: `${name}, kept as ${this.#kept(bytes)}`, broken });
  }

  /** A file that is written must be one; where the command failed there must be none. */
  #leftBehind(command: string, { code }: Ended): string | null {
    if (!existsSync(this.#output)) return null;
    if (code === 2) return "left a file behind although it failed";
    if (command === "journal") return null;
    try {
      const file = openXlsx(readFileSync(this.#output));
      for (const { name } of file.sheets) for (const cell of file.cells(name)) if (cell.address === "") return "wrote a cell without an address";
      return null;
    } catch (fault) {
      return fault instanceof FileFault ? `wrote what it cannot read: ${fault.message}` : String(fault);
    }
  }

  #kept(bytes: Uint8Array): string {
    const path = join(tmpdir(), `lotwright-fuzz-failed-${this.tally.failures.length + 1}.xlsx`);
    writeFileSync(path, bytes);
    return path;
  }

  end(): void {
    this.#runner.stop();
    rmSync(this.#folder, { recursive: true });
  }
}

const SECONDS = 120;
const ENDINGS: Readonly<Record<number, string>> = { 0: "computed", 1: "computed, with a difference", 2: "refused in a sentence" };
