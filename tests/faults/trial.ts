/** Runs in the browser: takes a filled task through its review, its writing and its undoing, with a fault at every step. */
import type { Page } from "../../src/pane/page";
import type { PaneHost } from "../../src/pane/pane-host";
import { tasks } from "../../src/pane/tasks";
import type { BookPort } from "../../src/workbook/port";
import { type Failing, failing } from "./failing";

/** The buttons of a task, by what they say. */
export interface Buttons {
  /** Shows the review; none where there is none. */
  readonly look?: string;
  readonly write: string;
  /** A part of the sentence that says what the workbook then holds. */
  readonly written: string;
}

/** One way in which a host can fail. */
export interface Faults {
  /** What fails, in words. */
  readonly what: string;
  failAt(n: number | null): void;
  hasFailed(): boolean;
  /** What of the fault is to be read in the pane. */
  readonly says: RegExp;
  /** Each n-th of them alone, where there are hundreds and the port's own contract has every one. */
  readonly every?: number;
  /** They fail the writing and then its taking back; an undoing that fails twice can only say so. */
  readonly isOfWriting?: boolean;
}

export interface Counts {
  /** Faults at each stage. */
  look: number;
  write: number;
  undo: number;
  /** How the workbook was after a fault, and nothing else is allowed. */
  before: number;
  after: number;
  /** What was not as it should be. */
  wrong: string[];
}

export interface Bench {
  readonly port: BookPort;
  state(): string | Promise<string>;
  readonly faults: readonly Faults[];
}

/** A short run leaves faults out. */
const STRIDE = Number(new URLSearchParams(location.search).get("stride") ?? 1);
const MOST = 2000;
const QUIET_MS = 40;

export function trial(root: HTMLElement, bench: Bench) {
  const counted: Failing = failing(bench.port);
  const host: PaneHost = {
    port: counted.port,
    separator: ",",
    decimal: ".",
    files: { current: () => Promise.reject(new Error("Nobody asks for this file")), handOver: () => Promise.reject(new Error("Nobody takes files here")) },
  };
  const kinds: readonly Faults[] = [{ what: "calls of the port", failAt: counted.failAt, hasFailed: counted.hasFailed, says: /The host failed for the test/ }, ...bench.faults];
  let current: Page | null = null;
  let changed = performance.now();
  new MutationObserver(() => (changed = performance.now())).observe(root, { subtree: true, childList: true, characterData: true, attributes: true });
  root.classList.add("lotwright-pane");

  const pause = (): Promise<void> => new Promise((done) => setTimeout(done, 8));
  async function settled(): Promise<void> {
    const from = performance.now();
    do await pause();
    while (performance.now() - from < 20_000 && (counted.open() > 0 || performance.now() - Math.max(changed, from) < QUIET_MS));
  }
  const buttons = (): HTMLButtonElement[] => [...root.querySelectorAll("button")].filter((one) => one.checkVisibility() && !one.disabled);
  const button = (says: string): HTMLButtonElement | undefined => buttons().find(({ textContent }) => textContent?.trim() === says);
  const text = (): string => root.innerText;
  async function press(says: string): Promise<boolean> {
    const found = button(says);
    found?.click();
    await settled();
    return found !== undefined;
  }
  const isReviewed = (): boolean => root.querySelector(".lw-review") !== null;

  async function open(title: string): Promise<void> {
    const task = tasks.find((one) => one.title === title);
    if (!task) throw new Error(`There is no task ${title}`);
    const openTask = await task.load();
    current?.close();
    openTask({ host, show: (page) => { current = page; root.replaceChildren(page.element); } }, () => undefined);
    await settled();
  }

  async function run({ look, write, written }: Buttons): Promise<Record<string, Counts>> {
    const before = await bench.state();
    const all: Record<string, Counts> = {};
    for (const kind of kinds) all[kind.what] = await tried(kind);
    return all;

    async function tried(kind: Faults): Promise<Counts> {
      const counts: Counts = { look: 0, write: 0, undo: 0, before: 0, after: 0, wrong: [] };
      const wrong = (stage: string, n: number, what: string): void => void counts.wrong.push(`${kind.what}, ${stage} ${n}: ${what}: ${text().slice(-400)}`);
      const every = (kind.every ?? 1) * STRIDE;
      let isArmed = false;
      const withFault = async (n: number, step: () => Promise<unknown>): Promise<boolean> => {
        kind.failAt(n);
        isArmed = true;
        await step();
        isArmed = false;
        kind.failAt(null);
        return kind.hasFailed();
      };
      async function review(): Promise<boolean> {
        if (look === undefined) return button(write) !== undefined;
        if (!isReviewed() && !(await press(look))) {
          await press("Look again");
          if (!isReviewed()) await press(look);
        }
        // A picture may still be drawn.
        for (const from = performance.now(); performance.now() - from < 3000 && !isReviewed() && !(isArmed && kind.hasFailed()); ) await pause();
        for (const tick of root.querySelectorAll<HTMLInputElement>('.lw-review input[type="checkbox"]:not(:checked)')) tick.click();
        return isReviewed();
      }
      const isBefore = async (): Promise<boolean> => (await bench.state()) === before;
      async function mustSay(stage: string, n: number): Promise<void> {
        // A field tells that its cell cannot be read; a second look may still be on its way.
        const isSaid = (): boolean => kind.says.test(text()) || text().includes("Something above cannot be reckoned with") || (stage === "look" && isReviewed());
        // A picture may still be drawn before it is said.
        for (const from = performance.now(); performance.now() - from < 3000 && !isSaid(); ) await pause();
        if (!isSaid()) wrong(stage, n, "the pane does not say what failed");
      }
      async function takeBack(stage: string, n: number): Promise<void> {
        await press("Undo");
        if (!(await isBefore())) wrong(stage, n, "it is not taken back");
        if (button("Undo")) wrong(stage, n, "the pane still offers to undo");
      }

      for (let n = 0; look !== undefined; n += every) {
        if (n > MOST) throw new Error("The review never came to its end");
        if (isReviewed()) {
          current?.back();
          await settled();
        }
        const fired = await withFault(n, review);
        if (!(await isBefore())) wrong("look", n, "the review wrote something");
        if (!fired) break;
        counts.look++;
        counts.before++;
        if (!isReviewed()) await mustSay("look", n);
      }

      let after = "";
      for (let n = 0; ; n += every) {
        if (n > MOST) throw new Error("The writing never came to its end");
        if (!(await review())) throw new Error(`There is no review before fault ${n}: ${text().slice(-500)}`);
        const fired = await withFault(n, () => press(write));
        const now = await bench.state();
        if (!fired) {
          after = now;
          if (now === before || !button("Undo") || !text().includes(written)) wrong("write", n, "without a fault it is not written");
          break;
        }
        counts.write++;
        if (now === before) {
          counts.before++;
          await mustSay("write", n);
          if (button("Undo") || text().includes(written)) wrong("write", n, "nothing is written and the pane says it is");
        } else {
          counts.after++;
          after ||= now;
          if (now !== after) wrong("write", n, "it is written in part");
          if (!button("Undo")) await press("Look again");
          if (!button("Undo") || !text().includes(written)) wrong("write", n, "it is written and the pane does not say so");
          await takeBack("write", n);
        }
      }

      if (kind.isOfWriting) {
        await takeBack("undo", 0);
        return counts;
      }
      for (let n = 0; ; n += every) {
        if (n > MOST) throw new Error("The undoing never came to its end");
        if (!button("Undo")) {
          await review();
          await press(write);
          // What could not be read after the last fault is read first.
          if (!button("Undo")) await press(write);
          if (!button("Undo")) throw new Error(`It cannot be written again before fault ${n}: ${text().slice(-500)}`);
        }
        const fired = await withFault(n, () => press("Undo"));
        const now = await bench.state();
        if (!fired) {
          if (now !== before || !text().includes("Undone")) wrong("undo", n, "without a fault it is not undone");
          break;
        }
        counts.undo++;
        if (now === before) {
          counts.before++;
          if (button("Undo")) wrong("undo", n, "it is undone and the pane still offers to undo");
          if (text().includes(written)) wrong("undo", n, "it is undone and the pane says that it is written");
        } else {
          counts.after++;
          if (now !== after) wrong("undo", n, "it is undone in part");
          await mustSay("undo", n);
          if (!button("Undo")) wrong("undo", n, "it is not undone and cannot be undone again");
        }
      }
      return counts;
    }
  }

  /** Another hand changes a cell while the review is open: what the pane says when it shall write, and whether it wrote. */
  async function meddled({ look = "", write }: Buttons, sheet: string, cell: string): Promise<{ says: string; isWritten: boolean }> {
    await press(look);
    for (const from = performance.now(); performance.now() - from < 5000 && !isReviewed(); ) await pause();
    for (const tick of root.querySelectorAll<HTMLInputElement>('.lw-review input[type="checkbox"]')) tick.click();
    const { undo } = await bench.port.write([{ sheet, cell, content: "by another hand" }]);
    const before = await bench.state();
    await press(write);
    const isWritten = (await bench.state()) !== before;
    const says = text();
    await undo();
    return { says, isWritten };
  }

  return { open, run, meddled, text, press, settled };
}

declare global {
  interface Window {
    trial: ReturnType<typeof trial>;
  }
}
