import type { CellReading } from "../../workbook/port";
import { addressOf, areaText, isInside, readAddress } from "../../workbook/xlsx/address";
import { addressOn } from "../../workbook/cell-range";
import { fill, h } from "../dom";
import type { Page } from "../page";
import type { PaneHost } from "../pane-host";
import { type Selected, followSelection } from "../selection";
import { actionsBar } from "./actions-bar";
import { type Explanation, type NamedCells, explain } from "../../explaining/explain";
import { explanationText } from "../../explaining/explanation-text";
import { type ExplanationView, explanationView } from "./explanation-view";
import { findFormula } from "./find-formula";
import { markSelected } from "./input-view";
import type { Standing } from "../../explaining/references";
import { Trail, isSamePlace } from "./trail";

/** The working of the selected cell, with a way to its inputs and back. */
export function explainPage(host: PaneHost, leave: () => void): Page {
  const { port } = host;
  const trail = new Trail();
  const heading = h("h1", { tabindex: -1 }, "Explain a cell");
  const announced = h("p", { class: "lw-unseen", role: "status" });
  const back = h("button", { type: "button", class: "lw-back", hidden: true, onclick: () => void goBack() });
  const body = h("div", { class: "lw-body" });
  const bar = actionsBar({ port, latest, shown: () => body });
  let selected: Standing | null = null;
  let shown: { readonly explanation: Explanation; readonly view: ExplanationView; readonly key: string } | null = null;
  /** False while a cell is selected that has nothing to explain. */
  let isExplaining = false;
  let run = 0;

  async function moved(now: Selected | string): Promise<void> {
    const mine = ++run;
    if (bar.cancel()) bar.say("");
    const spot = typeof now === "string" ? null : readAddress(now.cell);
    selected = typeof now === "string" || !spot ? null : { sheet: now.sheet, spot };
    if (!selected) return showNothing(String(now));
    try {
      await look(selected, () => mine === run);
    } catch (thrown) {
      if (mine === run) showNothing(thrown instanceof Error ? thrown.message : String(thrown));
    }
  }

  async function look(at: Standing, isNewest: () => boolean): Promise<void> {
    const found = await findFormula(at, port);
    if (!isNewest()) return;
    const isInput = isInputOf(shown?.explanation ?? null, at);
    if ("on" in found) {
      const explanation = await explain(found.on, found.shows, port);
      if (!isNewest()) return;
      trail.moved(shown?.explanation.on ?? null, found.on, isInput);
      return show(explanation);
    }
    const again = isInput ? await explainAgain() : null;
    if (!isNewest()) return;
    if (again) show(again);
    else showNothing(nothingIn(addressOf(at.spot), found));
  }

  /** The explained cell with what it holds now; null where it has become something else. */
  async function explainAgain(): Promise<Explanation | null> {
    if (!shown) return null;
    const found = await findFormula(shown.explanation.on, port);
    return "on" in found ? explain(found.on, found.shows, port) : null;
  }
  async function latest(): Promise<Explanation | null> {
    const again = await explainAgain();
    if (again) show(again);
    else bar.say("The cell holds no LOT formula any more: select another");
    return again;
  }

  function show(explanation: Explanation): void {
    const spillsInto = selected && !isSamePlace(selected, explanation.on) && !isInputOf(explanation, selected) ? addressOf(selected.spot) : null;
    const key = `${spillsInto ?? ""} ${explanationText(explanation)}`;
    if (!isExplaining || shown?.key !== key) {
      const hadFocus = body.contains(document.activeElement);
      const view = explanationView(explanation, spillsInto, host, (cells) => void jump(cells));
      shown = { explanation, view, key };
      fill(body, view.element);
      announced.textContent = `${explanation.place}: ${explanation.calls.map(({ name }) => name).join(", ")}`;
      if (hadFocus) heading.focus();
    }
    isExplaining = true;
    bar.element.hidden = false;
    if (selected && shown) markSelected(shown.view.jumps, selected.sheet, selected.spot);
    offerBack();
  }

  function showNothing(sentence: string): void {
    isExplaining = false;
    bar.element.hidden = true;
    const hadFocus = body.contains(document.activeElement);
    fill(
      body,
      h("p", { class: "lw-lead" }, "Select a cell whose formula holds LOT."),
      h("p", { class: "lw-about" }, sentence),
      h("p", { class: "lw-about" }, "Its working then stands here: the rule, the numbers put in and where they come from, constants with their sources, and each step to the result."),
    );
    announced.textContent = `Select a cell whose formula holds LOT. ${sentence}`;
    if (hadFocus) heading.focus();
    offerBack();
  }

  /** Where one came from: the explained cell while one looks elsewhere, else the one before it. */
  function target(): Standing | null {
    if (!shown || !selected) return null;
    const own = shown.explanation.on;
    const isElsewhere = !isExplaining || isInputOf(shown.explanation, selected);
    return isElsewhere && !isSamePlace(own, selected) ? own : trail.last();
  }
  function offerBack(): void {
    const to = target();
    if (!to && back === document.activeElement) heading.focus();
    back.hidden = to === null;
    if (to) back.textContent = `Back to ${placeText(to, selected?.sheet ?? null)}`;
  }
  async function goBack(): Promise<void> {
    const to = target();
    if (to) await select({ sheet: to.sheet, range: addressOf(to.spot) });
  }
  const jump = ({ sheet, area }: NamedCells): Promise<void> => select({ sheet, range: areaText(area) });
  async function select(place: { sheet: string; range: string }): Promise<void> {
    try {
      await port.select(place);
    } catch (thrown) {
      bar.say(thrown instanceof Error ? thrown.message : String(thrown));
    }
  }

  fill(body, h("p", { class: "lw-about" }, "Looking at the selected cell …"));
  bar.element.hidden = true;
  const unfollow = followSelection(port, (now) => void moved(now));
  return {
    element: h(
      "div",
      { class: "lw-page lw-explain" },
      h("header", { class: "lw-top" }, h("button", { type: "button", class: "lw-back", onclick: leave }, "All tasks"), heading),
      announced,
      back,
      body,
      bar.element,
    ),
    focus: () => heading.focus({ preventScroll: true }),
    back: () => {
      if (bar.cancel()) return;
      if (isExplaining && target()) void goBack();
      else leave();
    },
    close() {
      run++;
      unfollow();
    },
  };
}

const isInputOf = (explanation: Explanation | null, { sheet, spot }: Standing): boolean =>
  explanation !== null && [...explanation.references.values()].some((cells) => cells.sheet === sheet && isInside(spot, cells.area));

const placeText = ({ sheet, spot: { row, column } }: Standing, on: string | null): string => addressOn(sheet, { top: row, bottom: row, left: column, right: column }, on);

/** What a cell holds that has nothing to explain. */
function nothingIn(cell: string, { value, formula }: CellReading): string {
  if (formula !== null) return `The formula in ${cell} has none of our functions in it.`;
  return value === null || value === "" ? `${cell} is empty.` : `${cell} holds a plain value.`;
}
