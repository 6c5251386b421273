import { addressOn } from "../../workbook/cell-range";
import { readArea } from "../../workbook/xlsx/address";
import { lotNames } from "../../formulas/lot-calls";
import { fill, h } from "../dom";
import { userNotation } from "../notation";
import { longLook } from "../long-look";
import type { Page } from "../page";
import type { PaneHost } from "../pane-host";
import { type ListedPlace, type PlaceGroup, placeList } from "../place-list";
import { type ReviewWords, review } from "../review";
import { status } from "../status";
import type { Finding } from "./finding";
import { type FindingKind, KINDS } from "./kinds";
import { type LookedThrough, lookThrough } from "./look-through";
import { memoryOf } from "./memory";

/** Looks through the workbook for formulas of ours that do not compute, and repairs what can be repaired. */
export function repairPage(host: PaneHost, leave: () => void): Page {
  const { port } = host;
  const memory = memoryOf(port);
  const heading = h("h1", { tabindex: -1 }, "Repair");
  const told = status();
  const looking = longLook("Cells looked at", () => void look());
  const compute = h("button", { type: "button", onclick: () => void computeAgain() }, "Compute all again");
  const repairs = h("div", { class: "lw-body" });
  const go = h("button", { type: "button", class: "lw-primary", onclick: () => void repair() }, "Repair what is ticked");
  const question = h("div", { class: "lw-actions", hidden: true }, go);
  const list = placeList<RepairPlace>(memory.places, jump);
  const yours = h("div", { class: "lw-body" });
  const wide = h("div", { class: "lw-body" });
  const writing = review(port, userNotation(host), memory, (isWritten) => void written(isWritten));

  async function look(): Promise<void> {
    const { isGone, step } = looking.begin();
    show("Reading the workbook …", true);
    try {
      const found = await lookThrough(port, host.decimal, step);
      if (!isGone()) await showFound(found);
    } catch (thrown) {
      if (!isGone()) show(message(thrown), false);
    }
  }

  /** What is said, with what was found before taken away. */
  function show(sentence: string, isWorking: boolean): void {
    told.say(sentence);
    looking.show(isWorking, [compute, question]);
    question.hidden = true;
    writing.close();
    fill(repairs);
    fill(yours);
    fill(wide);
    list.show([]);
  }

  async function showFound(found: LookedThrough): Promise<void> {
    const { findings, isWhole } = found;
    const mendable = findings.filter(({ write }) => write !== null);
    const shown = mendable.slice(0, MOST_AT_ONCE);
    const left = findings.filter(({ write }) => write === null);
    show(`${isWhole ? "" : "Stopped. "}${summary(found)}`, false);
    if (shown.length > 0) {
      const more = mendable.length - shown.length;
      fill(
        repairs,
        h("h2", {}, `Can be repaired (${mendable.length})`),
        more === 0 ? null : h("p", { class: "lw-about" }, `The first ${shown.length} are shown: repair them, and the other ${more} come next.`),
      );
      const writes = shown.flatMap(({ write }) => write ?? []);
      await writing.show(writes, words(shown));
      writing.offerUndo();
      question.hidden = false;
    }
    if (left.length > 0) fill(yours, h("h2", {}, `For you to mend (${left.length})`));
    list.show(groupsOf(left));
    fill(wide, lookedAt(found, findings.length === 0));
  }

  async function repair(): Promise<void> {
    if (!writing.element.querySelector("input:checked")) {
      writing.say("Tick what is to be repaired first");
      writing.element.querySelector("input")?.focus();
      return;
    }
    await writing.write();
  }
  /** After a repair or its undoing. */
  async function written(isWritten: boolean): Promise<void> {
    try {
      if (isWritten) await port.recalculate();
      await look();
      if (!isWritten) writing.say("Undone: the workbook is as it was");
    } catch (thrown) {
      writing.say(message(thrown));
    }
  }
  async function computeAgain(): Promise<void> {
    show("Computing the workbook again …", true);
    try {
      await port.recalculate();
      await look();
    } catch (thrown) {
      show(message(thrown), false);
    }
  }
  function jump({ place }: RepairPlace): void {
    port.select(place).catch((thrown: unknown) => told.say(message(thrown)));
  }

  void look();
  return {
    element: h(
      "div",
      { class: "lw-page lw-repair" },
      h("div", { class: "lw-top" }, h("button", { type: "button", class: "lw-back", onclick: leave }, "All tasks"), heading),
      h("p", {}, "Cells with LOT formulas that do not compute, and what other programs left in them. Looking changes nothing."),
      h("div", { class: "lw-found" }, told.element, looking.working, h("div", { class: "lw-actions" }, looking.again, compute)),
      repairs,
      writing.element,
      question,
      yours,
      list.element,
      wide,
    ),
    focus: () => heading.focus({ preventScroll: true }),
    back: leave,
    close: looking.close,
  };
}

/** A longer list would be no review. */
const MOST_AT_ONCE = 1000;
const FOLDED_FROM = 12;

interface RepairPlace extends ListedPlace {
  readonly place: { readonly sheet: string; readonly range: string };
}

const kinds = Object.keys(KINDS) as FindingKind[];

function words(findings: readonly Finding[]): ReviewWords {
  const at = new Map(findings.map((one) => [`${one.sheet}!${one.cell}`, one]));
  const count = (kind: FindingKind): number => findings.filter((one) => one.kind === kind).length;
  return {
    action: null,
    title: null,
    written: "The ticked formulas are repaired",
    groups: kinds.map((id) => {
      const { title, about, tick } = KINDS[id];
      return { id, title: `${title} (${count(id)})`, about, ...(tick === undefined ? {} : { tick: { label: tick }, isFolded: count(id) >= FOLDED_FROM }) };
    }),
    about(sheet, cell) {
      const found = at.get(`${sheet}!${cell}`);
      if (!found) return null;
      return { heading: `on ${sheet}`, group: found.kind, ...(found.sentence === "" ? {} : { why: found.sentence }) };
    },
  };
}

function groupsOf(findings: readonly Finding[]): PlaceGroup<RepairPlace>[] {
  return kinds.flatMap((kind) => {
    const own = findings.filter((one) => one.kind === kind);
    return own.length === 0 ? [] : [{ title: KINDS[kind].title, about: KINDS[kind].about, places: own.map(placeOf) }];
  });
}

function placeOf({ sheet, cell, kind, shows, sentence, formula }: Finding): RepairPlace {
  const area = readArea(cell);
  const address = area ? addressOn(sheet, area, null) : `${sheet}!${cell}`;
  const [name = ""] = lotNames(formula);
  return { key: `${kind} ${address} ${sentence}`, address, heading: name, beside: shows.startsWith("#") ? shows : "", sentence, place: { sheet, range: cell } };
}

function summary({ findings, sheets }: LookedThrough): string {
  const cells = sheets.reduce((sum, one) => sum + one.cells, 0);
  if (cells === 0) return "No cell of this workbook holds a LOT formula";
  const ours = `${cells} ${cells === 1 ? "cell" : "cells"} with LOT formulas`;
  return findings.length === 0 ? `Nothing is wrong in ${ours}` : `${findings.length} of ${ours} ${findings.length === 1 ? "needs" : "need"} a look`;
}

/** What was looked at, so that silence can be trusted. */
function lookedAt({ sheets, isWhole }: LookedThrough, isOpen: boolean): HTMLElement {
  const rows = sheets.map(({ name, cells, isProtected }) => h("div", {}, h("dt", {}, name), h("dd", {}, `${cells === 0 ? "no LOT formula" : `${cells} with LOT formulas`}${isProtected ? ", protected" : ""}`)));
  return h(
    "details",
    { open: isOpen },
    h("summary", {}, "What was looked at"),
    h("dl", { class: "lw-looked" }, ...rows),
    h("p", { class: "lw-about" }, `${isWhole ? "Every filled cell of these sheets" : "These sheets up to where it was stopped"}, for names of ours that no program finds, for errors, and for formulas kept as texts. Not the rules of formats and lists, and no other workbook.`),
  );
}

const message = (thrown: unknown): string => (thrown instanceof Error ? thrown.message : String(thrown));
