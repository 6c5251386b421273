import { type Plan, type PlannedCell, type PlannedNote, apply, plan } from "../workbook/plan";
import type { BookPort, Change, Undo } from "../workbook/port";
import { SETTINGS_SHEET } from "../workbook/settings";
import { fill, h } from "./dom";
import type { Notation } from "./notation";
import { type ReviewWords, type Ticks, groupOf, reviewView } from "./review-view";
import { status } from "./status";

export type { CellWords, ReviewGroup, ReviewWords } from "./review-view";

/** What was written last and can be taken back; a task keeps it, so that it outlives a closed pane. */
export interface Written extends Undo {
  readonly port: BookPort;
  /** What the workbook holds now, as a sentence without its full stop: "Lot 2026-014 is in row 17 of Lots". */
  readonly sentence: string;
}

export interface Memory {
  written: Written | null;
}

/** Every change with its before and after, a tick for each cell that is filled, the writing, and the way back. */
export interface Review {
  readonly element: HTMLElement;
  /** Looks at the workbook as it is now and shows what would be written; false where it could not. */
  show(changes: readonly Change[], words: ReviewWords): Promise<boolean>;
  /** Writes what is shown, as its own button does. */
  write(): Promise<void>;
  /** Takes what is shown away; false where nothing is. */
  close(): boolean;
  /** Says again what was written last, with the way back, where there is one. */
  offerUndo(): void;
  say: ReturnType<typeof status>["say"];
  /** Does something of the page, and says what keeps it from being done. */
  attempt(step: () => Promise<unknown>): Promise<void>;
}

interface Shown {
  readonly planned: Plan;
  readonly ticks: Ticks;
  readonly words: ReviewWords;
}

export function review(port: BookPort, notation: Notation, memory: Memory, done: (isWritten: boolean) => void | Promise<void> = () => undefined): Review {
  const body = h("div", {});
  const told = status();
  let shown: Shown | null = null;
  let isBusy = false;

  function close(): boolean {
    const wasOpen = shown !== null;
    shown = null;
    fill(body);
    return wasOpen;
  }
  async function show(changes: readonly Change[], words: ReviewWords): Promise<boolean> {
    await guarded(async () => {
      close();
      const planned = await plan(port, changes);
      const ticks: Ticks = { single: new Set(), groups: new Set() };
      shown = { planned, ticks, words };
      const heading = words.title === null ? null : h("h2", { tabindex: -1 }, words.title ?? "What will be written");
      const go = words.action === null ? null : h("button", { type: "button", class: "lw-primary", onclick: () => void write() }, words.action);
      fill(body, h("section", { class: "lw-review", "aria-label": "What will be written" }, heading, ...reviewView(planned, ticks, words, notation), go && h("div", { class: "lw-actions" }, go)));
      told.say("");
      heading?.focus();
    });
    return shown !== null;
  }
  async function write(): Promise<void> {
    let isWritten = false;
    await guarded(async () => {
      isWritten = shown !== null && (await writeOut(shown));
    });
    if (isWritten) await follow(true);
  }
  async function writeOut({ planned, ticks, words }: Shown): Promise<boolean> {
    const needed = words.groups?.find(({ id, tick }) => tick?.isNeeded && !ticks.groups.has(id));
    if (needed?.tick) {
      told.say(`Tick “${needed.tick.label}” first: without it there is no place for what is written`);
      body.querySelector<HTMLElement>(`[data-group="${needed.id}"] input`)?.focus();
      return false;
    }
    const isAllowed = (one: PlannedCell | PlannedNote): boolean => !one.overwrites || isTicked(one, ticks, words);
    const kept = planned.cells.length - planned.cells.filter(isAllowed).length;
    const { undo } = await apply(port, { ...planned, cells: planned.cells.filter(isAllowed), notes: planned.notes.filter(isAllowed) }, isAllowed);
    close();
    memory.written = { port, undo, sentence: kept === 0 ? words.written : `${words.written}; ${kept} filled ${kept === 1 ? "cell stays" : "cells stay"} as before` };
    offerUndo();
    return true;
  }
  const takingBack = { label: "Undo", run: () => void takeBack() };
  function offerUndo(): void {
    if (memory.written?.port === port) told.say(memory.written.sentence, takingBack);
  }
  async function takeBack(): Promise<void> {
    let isUndone = false;
    await guarded(async () => {
      await memory.written?.undo();
      memory.written = null;
      isUndone = true;
      told.say("Undone: the workbook is as it was");
    }, takingBack);
    if (isUndone) await follow(false);
  }
  /** What the page does next may fail, which does not change what the workbook holds by now. */
  async function follow(isWritten: boolean): Promise<void> {
    try {
      await done(isWritten);
    } catch (thrown) {
      const what = isWritten ? memory.written?.sentence : "Undone: the workbook is as it was";
      told.say(`${what ?? "It is written"}. What it holds now cannot be shown here: ${messageOf(thrown)}`, isWritten ? takingBack : undefined);
    }
  }
  /** What the workbook refuses is said, whatever it is, with what can be tried again. */
  async function guarded(step: () => Promise<void>, again?: typeof takingBack): Promise<void> {
    if (isBusy) return;
    isBusy = true;
    try {
      await step();
    } catch (thrown) {
      told.say(messageOf(thrown), again);
    } finally {
      isBusy = false;
    }
  }
  const attempt = async (step: () => Promise<unknown>): Promise<void> => {
    try {
      await step();
    } catch (thrown) {
      told.say(messageOf(thrown));
    }
  };

  offerUndo();
  return { element: h("div", { class: "lw-writing" }, body, told.element), show, write, close, offerUndo, say: told.say, attempt };
}

const messageOf = (thrown: unknown): string => (thrown instanceof Error ? thrown.message : String(thrown));

/** What the add-in itself keeps needs no tick. */
function isTicked(one: PlannedCell | PlannedNote, { single, groups }: Ticks, words: ReviewWords): boolean {
  if ("write" in one && one.write.sheet === SETTINGS_SHEET) return true;
  const group = "write" in one ? groupOf(one, words) : undefined;
  return group?.tick ? groups.has(group.id) : single.has(one);
}
