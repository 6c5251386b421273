import type { Working, WorkingLine } from "../../core/expression/working";
import { fill, h } from "../dom";

export interface WorkingView {
  readonly element: HTMLElement;
  /** Null where there is nothing to work out. */
  show(working: Working | null): void;
}

/** What a part of a working is called; the page itself tells the caution and the source. */
const TITLES: Readonly<Record<WorkingLine["part"], string | null>> = {
  rule: "In words",
  formula: "Formula",
  given: "Put in",
  constant: "Constants",
  step: "Steps",
  rounding: "Rounding",
  result: "Result",
  caution: null,
  source: null,
};

/** How the result comes about, folded away until it is asked for. */
export function workingView(): WorkingView {
  const parts = h("dl", {});
  const copied = h("span", { role: "status", class: "lw-about" });
  let text = "";
  const copy = h("button", { type: "button", onclick: () => void copyText() }, "Copy as text");
  const element = h("details", { class: "lw-working", hidden: true }, h("summary", {}, "Working"), parts, h("div", { class: "lw-actions" }, copy, copied));

  /** Excel's web view may keep the clipboard to itself; a selected text can still be copied by hand. */
  async function copyText(): Promise<void> {
    try {
      await navigator.clipboard.writeText(text);
      copied.textContent = "Copied";
    } catch {
      getSelection()?.selectAllChildren(parts);
      copied.textContent = "Selected: press Ctrl+C, or Cmd+C on a Mac, to copy";
    }
  }
  return {
    element,
    show(working) {
      element.hidden = working === null;
      const now = working ? workingText(working) : "";
      if (now === text) return;
      text = now;
      copied.textContent = "";
      fill(parts, ...partsOf(working?.lines ?? []));
    },
  };
}

const workingText = ({ title, lines }: Working): string => [title, ...lines.map((line) => line.text)].join("\n");

const partsOf = (lines: readonly WorkingLine[]): HTMLElement[] =>
  lines.flatMap(({ part, text }, i) => {
    const title = TITLES[part];
    if (title === null) return [];
    const line = h("dd", {}, text);
    return lines[i - 1]?.part === part ? [line] : [h("dt", {}, title), line];
  });
