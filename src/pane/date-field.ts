import { freshId, h } from "./dom";
import type { FieldWords, FormField } from "./form-field";

/** A day, which the browser asks for in the user's own way and gives as 2026-03-30. */
export function dateField({ label, value }: FieldWords & { readonly value: string }, changed: (day: string) => void): FormField {
  const [id, noteId] = [freshId("field"), freshId("note")];
  const input = h("input", { id, type: "date", "aria-describedby": noteId, oninput: () => changed(input.value) });
  input.value = value;
  const note = h("p", { id: noteId, class: "lw-note", "aria-live": "polite" });
  return {
    element: h("div", { class: "lw-field" }, h("label", { for: id }, label), h("div", { class: "lw-entry" }, input), note),
    text: () => input.value,
    set: (to) => void (input.value = to),
    say(sentence, isFault = true) {
      if (note.textContent !== (sentence ?? "")) note.textContent = sentence ?? "";
      const isWrong = sentence !== null && isFault;
      note.classList.toggle("lw-fault", isWrong);
      if (isWrong) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
    },
    focus: () => input.focus(),
  };
}
