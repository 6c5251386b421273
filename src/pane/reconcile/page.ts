import { freshValues } from "../../journal/fresh-values";
import type { Day } from "../../lots/calendar";
import { type Contradiction, KIND_TITLES, type LookedAt, type Reconciled, reconcile, reconciledSentence } from "../../lots/reconcile";
import { readShop, withCells } from "../../lots/shop";
import { type LotPlace, readWorkbook } from "../../lots/where";
import { fill, h } from "../dom";
import { longLook } from "../long-look";
import type { Page } from "../page";
import type { PaneHost } from "../pane-host";
import { type ListedPlace, type PlaceGroup, placeList } from "../place-list";
import { status } from "../status";
import { memoryOf } from "./memory";

/** Looks through the list of lots for rows that contradict themselves. Nothing is written. */
export function reconcilePage(host: PaneHost, leave: () => void): Page {
  const { port } = host;
  const heading = h("h1", { tabindex: -1 }, "Reconcile");
  const told = status();
  const looking = longLook("Lots looked at", () => void look(), (of) => told.say(`Looking at ${of} lots …`));
  looking.again.classList.add("lw-primary");
  const beside = h("div", { class: "lw-body" });
  const wide = h("div", { class: "lw-body" });
  let sheet = "";
  const list = placeList(memoryOf(port), go);

  async function look(): Promise<void> {
    const { isGone, step } = looking.begin();
    show("Reading the workbook …", true);
    try {
      const { sheets, place } = await readWorkbook(port);
      const [shop, names] = [withCells(await readShop(port), sheets), await port.names()];
      if (isGone()) return;
      if (place === null || typeof place === "string") return empty(place);
      sheet = place.list.sheet;
      const found = await reconcile({ sheets, place }, { today: today(), shop, names, fresh: freshValues, step });
      if (!isGone()) showFound(place, found);
    } catch (thrown) {
      if (!isGone()) show(thrown instanceof Error ? thrown.message : String(thrown), false);
    }
  }

  /** What is said, with what was found before taken away. */
  function show(sentence: string, isWorking: boolean): void {
    told.say(sentence);
    fill(beside);
    fill(wide);
    list.show([]);
    looking.show(isWorking);
  }
  function empty(place: string | null): void {
    show(place ?? "It is not set up yet where this workbook keeps its lots", false);
    fill(beside, h("p", { class: "lw-about" }, "Go back to all tasks, open Set up a lot and show Lotwright the list under Where lots live; then look again."));
  }
  function showFound({ changes }: LotPlace, found: Reconciled): void {
    const { contradictions, looked } = found;
    show(`${found.lots < found.of ? "Stopped. " : ""}${reconciledSentence(found)}`, false);
    const remarks = [...changes, ...found.remarks];
    fill(
      beside,
      remarks.length === 0 ? null : h("ul", { class: "lw-caution lw-remarks" }, ...remarks.map((remark) => h("li", {}, `${remark}.`))),
      contradictions.length === 0 ? null : h("p", { class: "lw-about" }, "Arrow keys move through the list, Enter goes to the cell. Mend what is wrong in the sheet, then look again."),
    );
    list.show(groupsOf(contradictions));
    fill(wide, found.of === 0 ? null : lookedAt(looked, contradictions.length === 0));
  }

  function go({ address }: ListedPlace): void {
    port.select({ sheet, range: address }).catch((thrown: unknown) => told.say(thrown instanceof Error ? thrown.message : String(thrown)));
  }

  void look();
  return {
    element: h(
      "div",
      { class: "lw-page lw-reconcile" },
      h("div", { class: "lw-top" }, h("button", { type: "button", class: "lw-back", onclick: leave }, "All tasks"), heading),
      h("p", {}, "Lots whose rows contradict themselves, each with its cell and the reason. Looking changes nothing."),
      h("div", { class: "lw-found" }, told.element, looking.working, h("div", { class: "lw-actions" }, looking.again)),
      beside,
      list.element,
      wide,
    ),
    focus: () => heading.focus({ preventScroll: true }),
    back: leave,
    close: looking.close,
  };
}

function groupsOf(contradictions: readonly Contradiction[]): PlaceGroup<ListedPlace>[] {
  const kinds = [...new Set(contradictions.map(({ kind }) => kind))];
  return kinds.map((kind) => ({ title: KIND_TITLES[kind], places: contradictions.filter((one) => one.kind === kind).map(placeOf) }));
}

const placeOf = ({ kind, lot, cell, heading, sentence }: Contradiction): ListedPlace => ({ key: `${kind} ${cell} ${sentence}`, address: cell, heading, beside: lot, sentence });

function today(): Day {
  const now = new Date();
  return { year: now.getFullYear(), month: now.getMonth() + 1, day: now.getDate() };
}

/** What was looked at, so that silence can be trusted. */
function lookedAt(looked: readonly LookedAt[], isOpen: boolean): HTMLElement {
  const rows = looked.map(({ kind, count, without }) => h("div", {}, h("dt", {}, KIND_TITLES[kind]), h("dd", {}, without === null ? countText(kind, count) : `not looked at: ${without}`)));
  return h("details", { open: isOpen }, h("summary", {}, "What was looked at"), h("dl", { class: "lw-looked" }, ...rows));
}

function countText(kind: LookedAt["kind"], count: number): string {
  const [one, many] = kind === "overtyped" ? ["column of formulas", "columns of formulas"] : kind === "stale" ? ["cell", "cells"] : ["lot", "lots"];
  return `${count} ${count === 1 ? one : many}`;
}
