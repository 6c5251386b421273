import { fill, h } from "../pane/dom";

/** Sentences that the page shows, and questions that it asks. */
export class Notices {
  readonly element = h("div", { class: "notices", role: "status", "aria-live": "polite" });
  readonly #question = h("dialog", { class: "question", "aria-labelledby": "question-title" });

  constructor() {
    document.body.append(this.#question);
  }

  /** Stays until it is closed or a newer one of its kind comes. */
  tell(sentence: string, kind: "fault" | "note" = "note"): void {
    for (const old of this.element.querySelectorAll(`.${kind}`)) old.remove();
    const notice = h("div", { class: `notice ${kind}` }, h("p", {}, sentence), h("button", { type: "button", class: "close", "aria-label": "Close this notice", onclick: () => notice.remove() }, "×"));
    this.element.append(notice);
  }

  clear(): void {
    fill(this.element);
  }

  /** Gives the label of the button that was chosen, or null when the question was left. */
  async ask<Answer extends string>(title: string, lines: readonly string[], answers: readonly [Answer, ...Answer[]]): Promise<Answer | null> {
    const dialog = this.#question;
    const [first, ...rest] = answers;
    const button = (answer: string, isFirst: boolean): HTMLButtonElement => h("button", { value: answer, class: isFirst ? "primary" : "plain" }, answer);
    fill(
      dialog,
      h(
        "form",
        { method: "dialog" },
        h("h2", { id: "question-title" }, title),
        ...lines.map((line) => h("p", {}, line)),
        h("div", { class: "answers" }, button(first, true), ...rest.map((answer) => button(answer, false)), h("button", { value: "" , class: "plain" }, "Cancel")),
      ),
    );
    dialog.returnValue = "";
    dialog.showModal();
    await new Promise((closed) => dialog.addEventListener("close", closed, { once: true }));
    return answers.find((answer) => answer === dialog.returnValue) ?? null;
  }
}
