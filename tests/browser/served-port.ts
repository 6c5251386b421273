/** Runs in the browser: the way to a workbook that the test holds. */
import type { BookPort, Place, Undo } from "../../src/workbook/port";

declare global {
  interface Window {
    /** The test's side of the port: a method's name and its argument, as JSON. */
    book(method: string, argument: string): Promise<string>;
  }
}

/** Pictures travel as lists of bytes. */
async function ask<T>(method: string, argument: unknown = null): Promise<T> {
  const answer = JSON.parse(await window.book(method, JSON.stringify(argument, (_, value: unknown) => (value instanceof Uint8Array ? { bytes: [...value] } : value)))) as { fault?: string; value?: T };
  if (answer.fault !== undefined) throw new Error(answer.fault);
  return answer.value as T;
}

const listeners = new Set<(place: Place) => void>();

export const servedPort: BookPort = {
  selection: () => ask("selection"),
  onSelection(listener) {
    listeners.add(listener);
    return () => void listeners.delete(listener);
  },
  read: (place) => ask("read", place),
  async write(changes): Promise<Undo> {
    const number = await ask<number>("write", changes);
    return { undo: () => ask("undo", number) };
  },
  async select(place) {
    await ask("select", place);
    for (const listener of listeners) listener(place);
  },
  sheets: () => ask("sheets"),
  names: () => ask("names"),
  note: (at) => ask("note", at),
  recalculate: () => ask("recalculate"),
};
