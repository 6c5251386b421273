import { fill, freshId, h } from "../dom";
import type { Choice } from "../form-field";

/** A weight as the scale showed it, in one reading or several. */
export interface ReadingsField {
  readonly element: HTMLElement;
  texts(): readonly string[];
  unit(): string;
  set(texts: readonly string[], unit: string): void;
  say(sentence: string | null, isFault?: boolean): void;
  focus(): void;
}

interface Words {
  readonly label: string;
  readonly optional?: string;
  readonly units: readonly Choice[];
}

export function readingsField({ label, optional, units }: Words, changed: () => void): ReadingsField {
  const [firstId, noteId] = [freshId("field"), freshId("note")];
  const unit = h("select", { "aria-label": `Unit of ${label.toLowerCase()}`, class: "lw-unit", onchange: changed }, ...units.map((one) => h("option", { value: one.value }, one.label)));
  const list = h("div", { class: "lw-readings" });
  const note = h("p", { id: noteId, class: "lw-note", "aria-live": "polite" });
  const more = h("button", { type: "button", class: "lw-quiet", "aria-label": `Another reading of ${label.toLowerCase()}`, onclick: () => void (show([...texts(), ""], true), changed()) }, "Another reading");
  let inputs: readonly HTMLInputElement[] = [];

  const texts = (): readonly string[] => inputs.map(({ value }) => value.trim());
  function show(values: readonly string[], isFocused: boolean): void {
    inputs = values.map((value, i) => {
      const own = i === 0 ? { id: firstId } : { "aria-label": `${label}, reading ${i + 1}` };
      const input = h("input", { ...own, type: "text", inputmode: "decimal", autocomplete: "off", spellcheck: "false", "aria-describedby": noteId, oninput: changed });
      input.value = value;
      return input;
    });
    fill(list, ...inputs.map((input, i) => h("div", { class: "lw-entry" }, input, i === 0 ? unit : remover(i))));
    if (isFocused) inputs.at(-1)?.focus();
  }
  function remover(at: number): HTMLElement {
    const take = (): void => {
      show(texts().filter((_, i) => i !== at), true);
      changed();
    };
    return h("button", { type: "button", class: "lw-remove", "aria-label": `Take reading ${at + 1} away`, onclick: take }, "Remove");
  }

  show([""], false);
  return {
    element: h(
      "div",
      { class: "lw-field" },
      h("div", { class: "lw-labelled" }, h("label", { for: firstId }, label, optional === undefined ? null : h("span", { class: "lw-optional" }, ` ${optional}`)), more),
      list,
      note,
    ),
    texts,
    unit: () => unit.value,
    set(values, to) {
      show(values.length === 0 ? [""] : values, false);
      unit.value = to;
    },
    say(sentence, isFault = true) {
      if (note.textContent !== (sentence ?? "")) note.textContent = sentence ?? "";
      const isWrong = sentence !== null && isFault;
      note.classList.toggle("lw-fault", isWrong);
      for (const input of inputs) input.removeAttribute("aria-invalid");
      if (isWrong) for (const input of inputs) input.setAttribute("aria-invalid", "true");
    },
    focus: () => inputs[0]?.focus(),
  };
}
