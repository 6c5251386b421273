/** Runs in the browser: the quoting of a client beside a workbook that the test holds. */
import type { PaneHost } from "../../src/pane/pane-host";
import type { Page } from "../../src/pane/page";
import { quoteAClient } from "../../src/pane/quote-a-client/task";
import type { BookPort, Place, Undo } from "../../src/workbook/port";

declare global {
  interface Window {
    /** The test's side of the port: a method's name and its argument, as JSON. */
    book(method: string, argument: string): Promise<string>;
    quoting: { open(): void; close(): void };
  }
}

const listeners = new Set<(place: Place) => void>();

/** Pictures travel as lists of bytes. */
async function ask<T>(method: string, argument: unknown = null): Promise<T> {
  const answer = JSON.parse(await window.book(method, JSON.stringify(argument, (_, value: unknown) => (value instanceof Uint8Array ? { bytes: [...value] } : value)))) as { fault?: string; value?: T };
  if (answer.fault !== undefined) throw new Error(answer.fault);
  return answer.value as T;
}

const port: BookPort = {
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
  recalculate: () => ask("recalculate"),
  note: (at) => ask("note", at),
};

const decimal = new URLSearchParams(location.search).get("decimal") === "," ? "," : ".";
const host: PaneHost = {
  port,
  files: { current: () => Promise.reject(new Error("Nobody asks for this file")), handOver: () => Promise.reject(new Error("Nobody takes files here")) },
  separator: decimal === "," ? ";" : ",",
  decimal,
};
const found = document.querySelector<HTMLElement>("#pane");
if (!found) throw new Error("The page has no place for the pane");
const root = found;
root.classList.add("lotwright-pane");

let current: Page | null = null;
window.quoting = {
  open() {
    window.quoting.close();
    void quoteAClient.load().then((open) => open(
      {
        host,
        show(page) {
          current = page;
          root.replaceChildren(page.element);
        },
      },
      () => (document.title = "All tasks"),
    ));
  },
  close() {
    current?.close();
    current = null;
  },
};
window.quoting.open();
