import { type LotChanges, lotChanges } from "../../lots/lot-changes";
import { dayOf, dayText } from "../../lots/calendar";
import type { LotMatch } from "../../lots/corrections";
import { WHY } from "../../lots/row";
import { placeChanges } from "../../lots/where";
import type { PlausibilityRemark } from "../../lots/plausible";
import type { BookPort } from "../../workbook/port";
import { addressOn } from "../../workbook/cell-range";
import { readArea } from "../../workbook/xlsx/address";
import { fill, h } from "../dom";
import type { Notation } from "../notation";
import { painted } from "../painted";
import { type CellWords, type ReviewGroup, type ReviewWords, review } from "../review";
import type { FormLot } from "./lot-step";
import { type Draft, beginAnew } from "./memory";
import type { Session } from "./session";
import { shownIn } from "./shown-in-row";
import type { Step } from "./step";

interface Needs {
  readonly draft: Draft;
  readonly port: BookPort;
  readonly notation: Notation;
  readonly tableReferences: boolean;
  session(): Session;
  readAgain(): Promise<void>;
  lot(): Promise<FormLot | null>;
  planRemarks(): readonly PlausibilityRemark[];
  /** Begins with another lot. */
  anew(): void;
  /** There is something to write, or there is not. */
  ready(isReady: boolean): void;
}

export interface WriteStep extends Step {
  write(): Promise<void>;
}

/** Every cell that is written, before it is; then the way back and on. */
export function writeStep({ draft, port, notation, tableReferences, session, readAgain, lot, planRemarks, anew, ready }: Needs): WriteStep {
  const above = h("div", { class: "lw-notes" });
  const after = h("div", { class: "lw-actions", hidden: true }, h("button", { type: "button", class: "lw-primary", onclick: begin }, "Set up another lot"));
  const view = review(port, notation, draft, done);
  const results = h("dl", { class: "lw-row-shows" });
  const element = h("div", { class: "lw-body" }, above, view.element, results, after);
  let written: { readonly sheet: string; readonly row: number; readonly match: LotMatch } | null = null;

  function begin(): void {
    beginAnew(draft);
    view.say("");
    anew();
  }
  async function enter(): Promise<void> {
    after.hidden = draft.done === null;
    ready(false);
    fill(above);
    showResults();
    if (draft.done) return;
    view.close();
    fill(above, h("p", { role: "status", class: "lw-about" }, "Reading the workbook …"));
    await painted();
    try {
      await readAgain();
      const now = await lot();
      if (now) await show(now);
    } catch (thrown) {
      const fault = thrown instanceof Error ? thrown.message : String(thrown);
      lookAgain([fault]);
    }
  }
  function lookAgain(sentences: readonly string[]): void {
    fill(above, ...sentences.map((sentence) => h("p", { class: "lw-caution" }, `${sentence}.`)), h("div", { class: "lw-actions" }, h("button", { type: "button", onclick: () => void enter() }, "Look again")));
  }
  function showResults(): void {
    fill(results, ...(draft.done?.shows ?? []).flatMap(({ heading, text }) => [h("dt", {}, heading), h("dd", {}, text)]));
  }
  async function show(now: FormLot): Promise<void> {
    const { located, read } = now;
    const planned = lotChanges(located, { input: read.input, shop: session().shop, ofFineness: read.ofFineness, tableReferences });
    if (!("cells" in planned)) {
      view.close();
      view.say("");
      return lookAgain(planned);
    }
    const settings = await placeChanges(port, located.match);
    const number = read.input.lot && "value" in read.input.lot ? `Lot ${String(read.input.lot.value)}` : "The lot";
    written = { sheet: planned.sheet, row: planned.row, match: located.match };
    fill(above, ...remarksView([...now.remarks, ...planRemarks()], planned.remarks));
    const isShown = await view.show([...planned.changes, ...settings], wordsFor(planned, `${number} is in row ${planned.row} of ${planned.sheet}`));
    if (isShown) ready(true);
    else lookAgain([]);
  }
  async function done(isWritten: boolean): Promise<void> {
    if (isWritten && written) {
      const { sheet, row, match } = written;
      draft.done = { shows: [] };
      draft.place = null;
      draft.corrections = [];
      fill(above);
      after.hidden = false;
      ready(false);
      draft.done = { shows: await shownIn(port, sheet, row, match, notation) };
      showResults();
      await port.select({ sheet, range: `${match.list.columns[0]?.letter ?? "A"}${row}` });
      after.querySelector("button")?.focus();
    } else {
      draft.done = null;
      await enter();
      view.say("Undone: the workbook is as it was");
    }
  }
  return {
    title: "What will be written",
    element,
    enter,
    write: () => view.write(),
    mayLeave: () => true,
    focus: () => false,
    close: () => void view.close(),
  };
}

function remarksView(odd: readonly PlausibilityRemark[], others: readonly string[]): HTMLElement[] {
  const sentences = [...odd.map(({ sentence }) => sentence), ...others];
  return sentences.length === 0 ? [] : [h("section", { class: "lw-second-look", "aria-label": "Worth a second look" }, h("h3", {}, "Worth a second look"), h("ul", {}, ...sentences.map((sentence) => h("li", {}, `${sentence}.`))))];
}

const rowGroup = (why: string): "above" | "ours" | "given" => (why === WHY.above ? "above" : why === WHY.ours ? "ours" : "given");
const isToldByGroup = (why: string): boolean => Object.values<string>(WHY).includes(why);

function wordsFor(planned: LotChanges, written: string): ReviewWords {
  const { sheet, row, room, cells } = planned;
  const moves = room && (room.from === room.to ? `Row ${room.from}` : `Rows ${room.from} to ${room.to}`);
  const freed = room ? { about: "These cells are empty once the total has moved down." } : {};
  const groups: ReviewGroup[] = [
    ...(room
      ? [
          {
            id: "moved",
            title: `${moves ?? ""} ${room.from === room.to ? "moves" : "move"} down by one`,
            about: `The total stands right below the last lot. It moves down, its sums take the new lot in, and every formula that names its cells follows.`,
            tick: { label: "Move the total down", isNeeded: true },
            isFolded: true,
          },
        ]
      : []),
    { id: "heading", title: "New columns" },
    { id: "given", title: `What you gave, in row ${row} of ‘${sheet}’`, ...freed },
    { id: "above", title: "Formulas as in the cells above", ...freed },
    { id: "ours", title: "Formulas of Lotwright over the row’s own cells", ...freed },
    { id: "sum", title: "Sums below the list", about: "They end above the new row. Tick those that shall take it in." },
  ];
  const about = (on: string, cell: string): CellWords | null => {
    const part = cells.get(`${on}!${cell}`);
    if (!part) return null;
    const { heading, why, field } = part;
    const content = planned.changes.find((change) => "content" in change && change.sheet === on && change.cell === cell);
    const day = field === "date" && content && "content" in content && typeof content.content === "number" ? { shows: dayText(dayOf(content.content)) } : {};
    const isFollowing = part.part === "following";
    const area = readArea(cell);
    return {
      heading: isFollowing && area && on !== sheet ? `on ${addressOn(on, area, null).replace(/![^!]*$/, "")}${heading === "" ? "" : ` ${heading}`}` : heading,
      // The title of the group says the others.
      ...(isFollowing || part.part === "sum" || (part.part === "row" && !isToldByGroup(why)) ? { why: `${why.charAt(0).toUpperCase()}${why.slice(1)}.` } : {}),
      ...day,
      group: isFollowing ? "moved" : part.part === "row" ? rowGroup(why) : part.part,
      ...(room && part.part === "row" ? { tickedBy: "moved" } : {}),
    };
  };
  return { action: null, title: null, written, groups, about, settings: "which column is which" };
}
