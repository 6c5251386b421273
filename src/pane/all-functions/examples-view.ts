import type { Entry } from "../../catalogue/entry";
import { wholeCall } from "../../formulas/lot-calls";
import { h } from "../dom";
import { fieldText, formulaOf } from "./formula";
import { readArgument } from "../argument";
import { localResult } from "../local-result";
import { type Notation, portNotation } from "../notation";
import { choices } from "./suggestions";

/** Examples that put their arguments into the form. */
export function examplesView(entry: Entry, notation: Notation, use: (texts: readonly string[]) => void): HTMLElement | null {
  const shown = entry.examples.flatMap(({ formula, shows }) => {
    const call = wholeCall(formula);
    if (!call) return [];
    const texts = entry.parameters.map(({ wants }, i) => fieldText(call.arguments[i] ?? "", notation, choices(wants)));
    const given = call.arguments.map((written) => readArgument(written, portNotation));
    return [{ texts, formula: formulaOf(call.name, given, notation, null), shows: localResult(shows, notation) + (entry.spills ? " …" : "") }];
  });
  if (shown.length === 0) return null;
  return h(
    "details",
    { class: "lw-examples" },
    h("summary", {}, shown.length === 1 ? "An example" : `${shown.length} examples`),
    h(
      "ul",
      {},
      ...shown.map(({ texts, formula, shows }) =>
        h(
          "li",
          {},
          h(
            "button",
            { type: "button", class: "lw-example", title: "Fill the form with this example", onclick: () => use(texts) },
            h("code", {}, formula),
            h("span", { class: "lw-shows" }, shows),
          ),
        ),
      ),
    ),
  );
}
