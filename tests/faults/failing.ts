/** Runs in the browser too: a port whose host fails when it is told to. */
import type { BookPort, Undo } from "../../src/workbook/port";

export const FAULT = "The host failed for the test";

export interface Failing {
  readonly port: BookPort;
  /** Lets the n-th thing that is asked of the port from now on fail, 0 being the first; null lets all of it work. */
  failAt(n: number | null): void;
  /** Whether it came to that. */
  hasFailed(): boolean;
  /** Things that are asked and not answered yet. */
  open(): number;
}

export function failing(port: BookPort): Failing {
  let left: number | null = null;
  let failed = false;
  let open = 0;
  async function asked<T>(ask: () => Promise<T>): Promise<T> {
    open++;
    try {
      if (left !== null && left-- === 0) {
        failed = true;
        throw new Error(FAULT);
      }
      return await ask();
    } finally {
      open--;
    }
  }
  return {
    port: {
      selection: () => asked(() => port.selection()),
      onSelection: (listener) => port.onSelection(listener),
      read: (place) => asked(() => port.read(place)),
      write: (changes) =>
        asked(async (): Promise<Undo> => {
          const { undo } = await port.write(changes);
          return { undo: () => asked(undo) };
        }),
      select: (place) => asked(() => port.select(place)),
      sheets: () => asked(() => port.sheets()),
      names: () => asked(() => port.names()),
      note: (at) => asked(() => port.note(at)),
      recalculate: () => asked(() => port.recalculate()),
    },
    failAt(n) {
      left = n;
      failed &&= n === null;
    },
    hasFailed: () => failed,
    open: () => open,
  };
}
