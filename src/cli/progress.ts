const WIDTH = 24;
const EVERY_MS = 100;

/** A bar on a terminal's error stream for work that takes a while; silent where nobody looks. */
export function progress(stream: NodeJS.WriteStream = process.stderr): { step(what: string, done: number, of: number): void; end(): void } {
  const begun = Date.now();
  let shown = 0;
  const clear = (): void => {
    if (shown) stream.write(`\r${" ".repeat(WIDTH + 40)}\r`);
  };
  return {
    step(what, done, of) {
      const now = Date.now();
      if (!stream.isTTY || now - begun < 5 * EVERY_MS || now - shown < EVERY_MS) return;
      shown = now;
      const filled = Math.round((WIDTH * done) / Math.max(of, 1));
      stream.write(`\r[${"#".repeat(filled)}${".".repeat(WIDTH - filled)}] ${what.slice(0, 36).padEnd(36)}`);
    },
    end: clear,
  };
}
