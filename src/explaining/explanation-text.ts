import { workingText } from "../catalogue/working-text";
import { addressOn } from "../workbook/cell-range";
import type { ExplainedCall, Explanation } from "./explain";
import { remarkOn } from "./remark";

/** An explanation as plain text: what one would send to a client, or keep beside the cell. */
export function explanationText(of: Explanation): string {
  const shows = of.shows.value === null ? "" : ` = ${String(of.shows.value)}`;
  const remark = remarkOn(of);
  return [[`${of.place}${shows}`, of.formula, ...(remark === null ? [] : [remark])].join("\n"), ...of.calls.map((call) => callText(call, of))].join("\n\n");
}

function callText({ text, inputs, outcome }: ExplainedCall, { isWhole, on }: Explanation): string {
  const named = inputs.flatMap(({ cells }) => cells).filter(({ name }, i, all) => name !== null && all.findIndex((one) => one.text === all[i]?.text) === i);
  const names = named.map(({ sheet, area, name }) => `${addressOn(sheet, area, on.sheet)}: ${name ?? ""}`);
  return [...(isWhole ? [] : [text]), bodyText(outcome), ...(names.length > 0 ? ["", ...names] : [])].join("\n");
}

function bodyText(outcome: ExplainedCall["outcome"]): string {
  switch (outcome.kind) {
    case "worked":
      return workingText(outcome.working);
    case "waiting":
      return `${outcome.sentence}\n${workingText(outcome.outline)}`;
    case "stopped":
      return [`${outcome.code} ${outcome.sentence}`, ...(outcome.outline ? [workingText(outcome.outline)] : [])].join("\n");
    case "open":
      return `${openSentence(outcome.texts)}\n${workingText(outcome.outline)}`;
  }
}

export const openSentence = (texts: readonly string[]): string =>
  `What the spreadsheet alone can tell stands here as it is: ${texts.join(" and ")}. Put it into a cell of its own and name that cell to see it worked out`;
