import { type ChildProcess, spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

export interface Started {
  readonly address: string;
  readonly process: ChildProcess;
  /** Gives the exit code. */
  stop(): Promise<number | null>;
}

const START = fileURLToPath(new URL("../../src/build/start.mjs", import.meta.url));

/** npm start without a browser, on a port that is free: installs and builds what is missing, as on a user's machine. */
export function start(environment: Readonly<Record<string, string>> = { PORT: "0" }): Promise<Started> {
  const child = run(["--no-open"], environment);
  const ended = new Promise<number | null>((resolve) => child.once("close", resolve));
  let told = "";
  return new Promise((resolve, reject) => {
    child.stdout?.on("data", (data: Buffer) => {
      told += data.toString();
      const address = /http:\/\/\S+/.exec(told)?.[0];
      if (!address) return;
      resolve({
        address,
        process: child,
        stop: () => {
          child.kill("SIGINT");
          return ended;
        },
      });
    });
    child.stderr?.on("data", (data: Buffer) => {
      told += data.toString();
    });
    void ended.then((code) => reject(new Error(`npm start ended with ${code}: ${told}`)));
  });
}

/** Runs it to its end. */
export async function startFails(words: readonly string[], environment: Readonly<Record<string, string>> = {}): Promise<{ code: number | null; told: string }> {
  const child = run(words, environment);
  let told = "";
  for (const stream of [child.stdout, child.stderr]) stream?.on("data", (data: Buffer) => (told += data.toString()));
  const code = await new Promise<number | null>((resolve) => child.once("close", resolve));
  return { code, told };
}

const run = (words: readonly string[], environment: Readonly<Record<string, string>>): ChildProcess =>
  spawn(process.execPath, [START, ...words], { env: { ...process.env, PORT: undefined, ...environment }, stdio: ["ignore", "pipe", "pipe"] });
