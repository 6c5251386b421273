import { spaced } from "../../core/expression/spaced";
import type { Spot } from "../../workbook/xlsx/address";
import { isInside } from "../../workbook/xlsx/address";
import { addressOn } from "../../workbook/cell-range";
import { h } from "../dom";
import { localFormula } from "../local-formula";
import type { Notation } from "../notation";
import type { Explanation, Input, NamedCells } from "../../explaining/explain";
import { shownFound, withNumbers } from "./with-numbers";

/** A button that leads to cells. */
export interface Jump {
  readonly cells: NamedCells;
  readonly button: HTMLButtonElement;
}

export interface InputView {
  readonly element: HTMLElement;
  readonly jumps: readonly Jump[];
}

/** An argument: what it comes to, from which cells, and the way to them. */
export function inputView(input: Input, { on, references }: Explanation, notation: Notation, jump: (cells: NamedCells) => void): InputView {
  const { of, found, cells, isBlamed, parameter } = input;
  const isComputed = of.kind === "arithmetic" || of.kind === "negative" || of.kind === "percent" || of.kind === "brackets";
  const how = isComputed && found.kind !== "error" ? withNumbers(of, references, notation) : isPlain(input) ? null : localFormula(of.text, notation);
  const jumps = cells.map((one): Jump => ({ cells: one, button: jumpButton(one, on.sheet, jump) }));
  return {
    jumps,
    element: h(
      "li",
      { class: isBlamed ? "lw-input lw-blamed" : "lw-input" },
      h("span", { class: "lw-label" }, spaced(parameter), isBlamed ? h("span", { class: "lw-look" }, " look here") : null),
      h("span", { class: "lw-holds" }, shownFound(of, found, notation)),
      how === null ? null : h("span", { class: "lw-how" }, how),
      jumps.length === 0 ? null : h("span", { class: "lw-jumps" }, ...jumps.map(({ button }) => button)),
    ),
  };
}

/** A value, or cells that have a button of their own: its text says nothing more. */
const isPlain = ({ of }: Input): boolean => of.kind === "nothing" || of.kind === "value" || of.kind === "reference" || of.kind === "columns";

function jumpButton(cells: NamedCells, on: string, jump: (cells: NamedCells) => void): HTMLButtonElement {
  const address = addressOn(cells.sheet, cells.area, on);
  const text = cells.name === null ? address : `${cells.name}, ${address}`;
  return h("button", { type: "button", class: "lw-jump", "aria-label": `Go to ${text}`, title: `Go to ${text}`, onclick: () => jump(cells) }, text);
}

/** Marks the buttons whose cells are selected. */
export function markSelected(jumps: readonly Jump[], sheet: string, spot: Spot): void {
  for (const { cells, button } of jumps) {
    if (cells.sheet === sheet && isInside(spot, cells.area)) button.setAttribute("aria-current", "true");
    else button.removeAttribute("aria-current");
  }
}
