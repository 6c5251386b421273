import { type ChildProcess, fork } from "node:child_process";
import { fileURLToPath } from "node:url";

/** How a command ended: its code and what it said, or what is wrong with how it ended. */
export interface Ended {
  readonly code: number;
  readonly said: string;
  readonly broken: string | null;
}

const MEMORY = "--max-old-space-size=768";
/** The grid keeps every formula that it ever compiled, which no user's process lives to see. */
const RUNS_A_PROCESS = 500;

/** Runs commands in a process of their own: one that never ends or fills its memory is ended, and the next one runs. */
export class CommandRunner {
  #process: ChildProcess | null = null;
  #runs = 0;

  async run(words: readonly string[], seconds = 60): Promise<Ended> {
    if (this.#runs++ % RUNS_A_PROCESS === 0) this.stop();
    const child = (this.#process ??= fork(fileURLToPath(new URL("./command-process.ts", import.meta.url)), { execArgv: ["--import", "tsx", MEMORY], silent: true }));
    const ended = await new Promise<Ended>((resolve) => {
      const timer = setTimeout(() => resolve(broken(`did not end in ${seconds} s`)), seconds * 1000);
      const end = (how: Ended): void => {
        clearTimeout(timer);
        child.removeAllListeners();
        resolve(how);
      };
      child.once("message", (how) => end(how as Ended));
      child.once("exit", (code, signal) => end(broken(`its process ended with ${code ?? signal}`)));
      child.send(words);
    });
    if (ended.broken !== null) this.stop();
    return ended;
  }

  stop(): void {
    this.#process?.kill("SIGKILL");
    this.#process = null;
  }
}

const broken = (what: string): Ended => ({ code: 2, said: "", broken: what });
