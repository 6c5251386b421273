import { lotChanges } from "../../lots/lot-changes";
import type { PlausibilityRemark } from "../../lots/plausible";
import type { BookPort, CellWrite } from "../../workbook/port";
import { fill, h } from "../dom";
import type { Notation } from "../notation";
import { type Selected, followSelection } from "../selection";
import { type Figures, figures } from "./figures";
import { figuresView } from "./figures-view";
import { besideField, remarksOn } from "./lot-facts";
import { type LotForm, lotForm } from "./lot-form";
import type { LotKey } from "./lot-keys";
import type { Draft } from "./memory";
import { type Known, known } from "./prefill";
import { type ReadLot, readLot } from "./read-lot";
import { previewed } from "../row-preview";
import { type Located, type Session, locate } from "./session";
import type { Step } from "./step";

/** The lot as the form has it, with what it comes to. */
export interface FormLot {
  readonly located: Located;
  readonly read: ReadLot;
  readonly figures: Figures;
  readonly remarks: readonly PlausibilityRemark[];
}

interface Needs {
  readonly draft: Draft;
  readonly port: BookPort;
  readonly notation: Notation;
  session(): Session;
}

export interface LotStep extends Step {
  /** Live figures, which stand above Back and Next. */
  readonly bar: HTMLElement;
  /** Null while no place is chosen. */
  lot(): Promise<FormLot | null>;
}

/** Typing goes on for this long before the form is read again. */
const PAUSE = 150;

export function lotStep({ draft, port, notation, session }: Needs): LotStep {
  const element = h("div", {});
  const bar = figuresView(notation);
  let shown: { readonly of: Session; readonly form: LotForm; readonly located: Located; readonly known: Known } | null = null;
  let selected: Selected | null = null;
  let unfollow: (() => void) | null = null;
  let pause: ReturnType<typeof setTimeout> | undefined;
  let run = 0;
  /** What is still missing is said when one wants to go on. */
  let isAsked = false;

  function changed(): void {
    clearTimeout(pause);
    pause = setTimeout(() => void recompute(), PAUSE);
  }
  async function lot(): Promise<FormLot | null> {
    clearTimeout(pause);
    // The workbook may have been read once more since.
    if (shown?.of !== session()) prepare();
    if (!shown) return null;
    const { form, located, known: lots } = shown;
    const read = await readLot({ located, known: lots, typed: form.typed, notation, port });
    const byTerms = figures(read);
    const now = lots.payout === null ? byTerms : { ...byTerms, ...(await byColumn(lots.payout, read, byTerms, located)) };
    return { located, read, figures: now, remarks: remarksOn(read, now, located, lots, session()) };
  }
  /** The payout as its column will show it. */
  async function byColumn({ letter, isOurs }: NonNullable<Known["payout"]>, read: ReadLot, { fine, payout }: Figures, located: Located): Promise<Pick<Figures, "payout" | "payoutBy">> {
    const planned = fine === null || read.faults.size > 0 ? [] : lotChanges(located, { input: read.input, shop: session().shop, ofFineness: [], tableReferences: false });
    const own = "cells" in planned ? await previewed({ sheet: planned.sheet, row: planned.row, writes: planned.changes.filter((change): change is CellWrite => "content" in change && "cell" in change) }, `${letter}${planned.row}`, port) : null;
    return own !== null || isOurs ? { payout: own, payoutBy: "column" } : { payout, payoutBy: "terms" };
  }
  async function recompute(): Promise<FormLot | null> {
    const mine = ++run;
    const now = await lot();
    if (mine === run && now) show(now);
    return now;
  }
  function show({ read, figures: now, remarks }: FormLot): void {
    const { form, known: lots } = shown ?? {};
    if (!form) return;
    const said = new Map<LotKey, { sentence: string; isFault: boolean }>();
    const isShown = (key: LotKey): boolean => key !== "price" || (lots?.terms.includes("price") ?? false);
    for (const remark of remarks) {
      const key = besideField(remark, isShown) ?? "gross";
      said.set(key, { sentence: [said.get(key)?.sentence, remark.sentence].filter((one) => one !== undefined).join(". "), isFault: false });
    }
    for (const [key, sentence] of [...now.faults, ...read.faults]) if (isAsked || !isMissing(form, key)) said.set(key, { sentence, isFault: true });
    form.say(said);
    bar.show(now, lots !== undefined && (lots.terms.includes("price") || lots.payout !== null));
  }
  function prepare(): void {
    const located = locate(session(), draft);
    if (!located) return;
    const lots = known(located, session(), notation);
    const form = lotForm(located, lots, draft, changed);
    shown = { of: session(), form, located, known: lots };
    form.offer(selected);
    fill(element, form.element);
  }
  return {
    title: "The lot",
    element,
    bar: bar.element,
    lot,
    async enter() {
      isAsked = false;
      prepare();
      unfollow ??= followSelection(port, (now) => {
        selected = typeof now === "string" ? null : now;
        shown?.form.offer(selected);
      });
      await recompute();
    },
    async mayLeave() {
      isAsked = true;
      const now = await recompute();
      const [first] = now ? [...now.read.faults.keys(), ...now.figures.faults.keys()] : [];
      if (first !== undefined) shown?.form.focus(first);
      return now !== null && first === undefined;
    },
    focus() {
      shown?.form.focusFirst();
      return shown !== null;
    },
    close() {
      clearTimeout(pause);
      run++;
      unfollow?.();
      unfollow = null;
    },
  };
}

/** Nothing was written yet: no fault, but not done either. */
const isMissing = (form: LotForm, key: LotKey): boolean => form.typed(key).texts.every((text) => text.trim() === "");
