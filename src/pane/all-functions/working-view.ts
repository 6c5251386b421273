import { h } from "../dom";

export interface WorkingView {
  readonly element: HTMLElement;
  /** Null where there is nothing to work out. */
  show(working: string | null): void;
}

/** How the result comes about, folded away until it is asked for. */
export function workingView(): WorkingView {
  const text = h("pre", { tabindex: 0, "aria-label": "Working" });
  const copied = h("span", { role: "status", class: "about" });
  const copy = h("button", { type: "button", onclick: () => void copyText(text, (said) => (copied.textContent = said)) }, "Copy");
  const element = h("details", { class: "working", hidden: true }, h("summary", {}, "Working"), text, h("div", { class: "actions" }, copy, copied));
  return {
    element,
    show(working) {
      element.hidden = working === null;
      if (text.textContent !== working) {
        text.textContent = working;
        copied.textContent = "";
      }
    },
  };
}

/** Excel's web view may keep the clipboard to itself; a selected text can still be copied by hand. */
async function copyText(from: HTMLElement, said: (sentence: string) => void): Promise<void> {
  try {
    await navigator.clipboard.writeText(from.textContent);
    said("Copied");
  } catch {
    getSelection()?.selectAllChildren(from);
    said("Selected: press Ctrl+C, or Cmd+C on a Mac, to copy");
  }
}
