import type { Parameter } from "../../catalogue/entry";
import { spaced } from "../../core/expression/spaced";
import { fill, freshId, h } from "../dom";
import type { FieldNote } from "./compute";
import { suggestions } from "./suggestions";

/** One argument's field: its label, what it must be, and what is wrong with it. */
export interface Field {
  readonly element: HTMLElement;
  readonly input: HTMLInputElement;
  /** The cells that the button beside it puts into it; null where none can be seen. */
  offer(cells: string | null): void;
  say(notes: readonly FieldNote[]): void;
}

export function field(parameter: Parameter, names: readonly string[], changed: () => void): Field {
  const label = spaced(parameter.name);
  const [id, about, note, list] = [freshId("field"), freshId("about"), freshId("note"), freshId("list")];
  const proposed = suggestions(parameter.wants);
  const input = h("input", {
    id,
    type: "text",
    autocomplete: "off",
    autocapitalize: "off",
    spellcheck: "false",
    "aria-describedby": `${about} ${note}`,
    "aria-required": parameter.optional ? undefined : "true",
    list: proposed.length > 0 ? list : undefined,
    oninput: changed,
  });
  const take = h("button", { type: "button", class: "lw-take", hidden: true });
  let cells: string | null = null;
  take.addEventListener("click", () => {
    if (cells === null) return;
    input.value = cells;
    changed();
    input.focus();
  });
  const said = h("p", { id: note, class: "lw-note", "aria-live": "polite" });
  return {
    element: h(
      "div",
      { class: "lw-field" },
      h("label", { for: id }, label, parameter.optional ? h("span", { class: "lw-optional" }, ` ${leftOut(parameter, names)}`) : null),
      h("div", { class: "lw-entry" }, input, take),
      proposed.length > 0 ? h("datalist", { id: list }, ...proposed.map((value) => h("option", { value }))) : null,
      h("p", { id: about, class: "lw-about" }, parameter.description, parameter.wants ? h("span", { class: "lw-wants" }, ` ${sentenceOf(parameter.wants)}`) : null),
      said,
    ),
    input,
    offer(selected) {
      cells = selected;
      take.hidden = selected === null;
      if (selected === null) return;
      fill(take, h("span", { "aria-hidden": "true" }, "← "), selected);
      take.setAttribute("aria-label", `Put ${selected} into ${label}`);
      take.title = `Put ${selected} into ${label}`;
    },
    say(notes) {
      const fault = notes.find(({ isFault }) => isFault);
      const text = (fault ?? notes[0])?.sentence ?? "";
      if (said.textContent !== text) said.textContent = text;
      said.classList.toggle("lw-fault", fault !== undefined);
      if (fault) input.setAttribute("aria-invalid", "true");
      else input.removeAttribute("aria-invalid");
    },
  };
}

function leftOut({ otherwise }: Parameter, names: readonly string[]): string {
  if (otherwise === null || otherwise === "none") return "may be left out";
  return names.includes(otherwise) ? `as ${spaced(otherwise)} when left out` : `${otherwise} when left out`;
}

const sentenceOf = (wants: string): string => `Write ${wants}.`;
