/** The grid reports its timings with console.debug, which Node prints among a command's own output. */
export function quietly<T>(run: () => T): T {
  const { debug } = console;
  Object.assign(console, { debug: () => undefined });
  try {
    return run();
  } finally {
    Object.assign(console, { debug });
  }
}
