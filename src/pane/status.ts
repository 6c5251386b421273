import { fill, h } from "./dom";

export interface Status {
  readonly element: HTMLElement;
  /** Says a sentence, with one thing to do about it. */
  say(sentence: string, action?: { readonly label: string; readonly run: () => void }): void;
}

/** One line that tells what has just happened, to eyes and to screen readers. */
export function status(): Status {
  const said = h("p", { role: "status" });
  const beside = h("span", {});
  return {
    element: h("div", { class: "lw-status" }, said, beside),
    say(sentence, action) {
      said.textContent = sentence;
      fill(beside, action ? h("button", { type: "button", onclick: action.run }, action.label) : null);
    },
  };
}
