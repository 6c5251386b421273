import { freshId, h } from "./dom";

/** One field of a form: a label, what it is about, and what is wrong with it. */
export interface FormField {
  readonly element: HTMLElement;
  /** As it stands in the field, without blanks around it. */
  text(): string;
  set(text: string): void;
  /** Says what is wrong, or null where nothing is; a remark does not make the field wrong. */
  say(sentence: string | null, isFault?: boolean): void;
  focus(): void;
}

export interface FieldWords {
  readonly label: string;
  readonly about?: string;
  /** Beside the label of a field that may stay empty. */
  readonly optional?: string;
}

interface TextWords extends FieldWords {
  readonly value?: string;
  readonly suggestions?: readonly string[];
  /** Several lines, such as an address. */
  readonly lines?: number;
}

type Changed = () => void;

export function textField({ value = "", suggestions = [], lines, ...words }: TextWords, changed: Changed): FormField {
  const list = suggestions.length > 0 ? freshId("list") : undefined;
  const common = { autocomplete: "off", spellcheck: "false", oninput: changed };
  const control = lines === undefined ? h("input", { ...common, type: "text", list }) : h("textarea", { ...common, rows: lines });
  control.value = value;
  const options = list === undefined ? null : h("datalist", { id: list }, ...suggestions.map((one) => h("option", { value: one })));
  return fieldOf(control, words, options);
}

export interface Choice {
  readonly value: string;
  readonly label: string;
}

export function choiceField({ choices, value, ...words }: FieldWords & { readonly choices: readonly Choice[]; readonly value?: string }, changed: Changed): FormField {
  const control = h("select", { onchange: changed }, ...choices.map((choice) => h("option", { value: choice.value }, choice.label)));
  if (value !== undefined) control.value = value;
  return fieldOf(control, words, null);
}

/** A number or text with its unit beside it, under one label. */
export interface MeasuredField extends FormField {
  unit(): string;
  setUnit(unit: string): void;
}

export function measuredField({ units, unit, ...words }: TextWords & { readonly units: readonly Choice[]; readonly unit?: string }, changed: Changed): MeasuredField {
  const field = textField(words, changed);
  const select = h("select", { "aria-label": `Unit of ${words.label.toLowerCase()}`, class: "lw-unit", onchange: changed }, ...units.map((one) => h("option", { value: one.value }, one.label)));
  if (unit !== undefined) select.value = unit;
  field.element.querySelector(".lw-entry")?.append(select);
  return { ...field, unit: () => select.value, setUnit: (to) => void (select.value = to) };
}

function fieldOf(control: HTMLInputElement | HTMLTextAreaElement | HTMLSelectElement, { label, about, optional }: FieldWords, beside: Node | null): FormField {
  const [id, aboutId, noteId] = [freshId("field"), freshId("about"), freshId("note")];
  control.id = id;
  control.setAttribute("aria-describedby", about === undefined ? noteId : `${aboutId} ${noteId}`);
  const note = h("p", { id: noteId, class: "lw-note", "aria-live": "polite" });
  return {
    element: h(
      "div",
      { class: "lw-field" },
      h("label", { for: id }, label, optional === undefined ? null : h("span", { class: "lw-optional" }, ` ${optional}`)),
      h("div", { class: "lw-entry" }, control),
      beside,
      about === undefined ? null : h("p", { id: aboutId, class: "lw-about" }, about),
      note,
    ),
    text: () => control.value.trim(),
    set: (text) => void (control.value = text),
    say(sentence, isFault = true) {
      if (note.textContent !== (sentence ?? "")) note.textContent = sentence ?? "";
      const isWrong = sentence !== null && isFault;
      note.classList.toggle("lw-fault", isWrong);
      if (isWrong) control.setAttribute("aria-invalid", "true");
      else control.removeAttribute("aria-invalid");
    },
    focus: () => control.focus(),
  };
}
