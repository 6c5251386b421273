import { find } from "../../catalogue/catalogue";
import type { Working } from "../../core/expression/working";
import type { Twin } from "../../formulas/native-twin";
import { copyText } from "../copy-text";
import { h } from "../dom";
import { localFormula } from "../local-formula";
import { type Notation, userNotation } from "../notation";
import type { PaneHost } from "../pane-host";
import { referenceLink } from "../reference-link";
import { workingParts } from "../working-parts";
import type { ExplainedCall, Explanation, NamedCells, Outcome } from "../../explaining/explain";
import { openSentence } from "../../explaining/explanation-text";
import { type Jump, inputView } from "./input-view";
import { remarkOn } from "../../explaining/remark";
import { shownNumber } from "./with-numbers";

export interface ExplanationView {
  readonly element: HTMLElement;
  readonly jumps: readonly Jump[];
}

/** All that is told of a cell. `selected` names the cell that its result spills into, where another is selected. */
export function explanationView(of: Explanation, selected: string | null, host: PaneHost, jump: (cells: NamedCells) => void): ExplanationView {
  const notation = userNotation(host);
  const calls = of.calls.map((call) => callView(call, of, host, jump));
  const remark = remarkOn(of);
  return {
    jumps: calls.flatMap(({ jumps }) => jumps),
    element: h(
      "div",
      { class: "lw-explanation" },
      h(
        "section",
        { class: "lw-cell", "aria-label": "The cell" },
        h("p", { class: "lw-of" }, of.place, selected === null ? null : `, which fills ${selected}`),
        h("p", { class: "lw-shown" }, shown(of, notation)),
        h("p", { class: "lw-formula" }, h("code", {}, localFormula(of.formula, notation))),
        remark === null ? null : h("p", { class: "lw-caution", role: "note" }, remark),
      ),
      ...calls.map(({ element }) => element),
      // One that cannot be computed yet may have one later.
      of.twin === null && of.calls.some(({ outcome }) => outcome.kind !== "worked") ? null : twinView(of.twin, notation),
    ),
  };
}

function shown({ shows: { value } }: Explanation, notation: Notation): string {
  if (typeof value === "number") return shownNumber(value, notation);
  return value === null || value === "" ? "nothing" : String(value);
}

function callView(call: ExplainedCall, of: Explanation, host: PaneHost, jump: (cells: NamedCells) => void): ExplanationView {
  const notation = userNotation(host);
  const inputs = call.inputs.map((input) => inputView(input, of, notation, jump));
  const { outcome } = call;
  const working = outcome.kind === "worked" ? outcome.working : outcome.outline;
  return {
    jumps: inputs.flatMap(({ jumps }) => jumps),
    element: h(
      "section",
      { class: "lw-call", "aria-label": call.name },
      h("h2", {}, h("span", { class: "lw-name" }, call.name), working ? h("span", { class: "lw-title" }, ` ${working.title}`) : null),
      of.isWhole ? null : h("p", { class: "lw-formula" }, h("code", {}, localFormula(call.text, notation))),
      said(outcome),
      inputs.length === 0 ? null : h("ul", { class: "lw-inputs", "aria-label": "Inputs" }, ...inputs.map(({ element }) => element)),
      working ? parts(working) : null,
      linkTo(call.name, host),
    ),
  };
}

/** Only a function of ours has a place there: a formula may call what was misspelt. */
function linkTo(name: string, host: PaneHost): HTMLElement | null {
  const entry = find(name);
  return entry ? referenceLink(host, entry.id, `${entry.name} in the reference`) : null;
}

const parts = ({ lines }: Working): HTMLElement | null => (lines.length > 0 ? workingParts(lines) : null);

/** What keeps a function from its result. */
function said(outcome: Outcome): HTMLElement | null {
  switch (outcome.kind) {
    case "worked":
      return null;
    case "waiting":
      return h("p", { class: "lw-said" }, `${outcome.sentence}. Fill in what is marked below.`);
    case "stopped":
      return h("p", { class: "lw-said lw-fault" }, h("span", { class: "lw-code" }, outcome.code), ` ${outcome.sentence}`);
    case "open":
      return h("p", { class: "lw-said" }, openSentence(outcome.texts));
  }
}

/** The ordinary formula that computes the same on a machine without the add-in. */
function twinView(twin: Twin | null, notation: Notation): HTMLElement {
  const summary = h("summary", {}, "Without the add-in");
  if (twin === null) return h("details", { class: "lw-twin" }, summary, h("p", { class: "lw-about" }, "No ordinary formula computes this: a workbook that is shared keeps its value."));
  const rows = typeof twin === "string" ? [[twin]] : twin;
  const local = rows.map((row) => row.map((cell) => localFormula(cell, notation)));
  const text = local.map((row) => row.join("\t")).join("\n");
  const code = h("code", {}, ...local.map((row) => h("span", { class: "lw-code-row" }, row.join("   "))));
  const copied = h("span", { role: "status", class: "lw-about" });
  const copy = h("button", { type: "button", onclick: () => void copyText(text, code).then((said) => (copied.textContent = said)) }, typeof twin === "string" ? "Copy the formula" : "Copy the formulas");
  return h(
    "details",
    { class: "lw-twin" },
    summary,
    h("p", { class: "lw-about" }, typeof twin === "string" ? "An ordinary formula that any spreadsheet computes:" : `Ordinary formulas for its ${rows.length} rows, which any spreadsheet computes:`),
    h("div", { class: "lw-code-box", tabindex: 0, role: "region", "aria-label": "Formula without the add-in" }, code),
    h("div", { class: "lw-actions" }, copy, copied),
  );
}
