import type { Correction } from "../../lots/corrections";
import type { FieldId } from "../../lots/fields";
import { OWN_UNITS } from "../../lots/own-list";
import { fill, freshId, h } from "../dom";
import { choiceField, textField } from "../form-field";
import { type MatchView, matchView } from "./match-view";
import type { Draft, PlaceChoice } from "./memory";
import { type Located, type Session, choiceOf, keptPlace, locate, newSheetOf, placeText } from "./session";
import type { Step } from "./step";

interface Needs {
  readonly draft: Draft;
  session(): Session;
  /** Reads the workbook once more. */
  readAgain(): Promise<void>;
  say(sentence: string): void;
}

/** In which list of the workbook the lot goes, and which of its columns is which. */
export function whereStep({ draft, session, readAgain, say }: Needs): Step {
  const element = h("div", { class: "lw-body" });
  const notes = h("div", { class: "lw-notes" });
  let view: MatchView | null = null;

  const isKept = (located: Located | null): boolean => located?.choice.kind === "kept" && draft.place === null;
  function show(): void {
    const now = session();
    const located = locate(now, draft);
    view = null;
    if (located && isKept(located) && !located.match.matches.some(({ unit }) => unit?.symbol === null && unit.from === null)) fill(element, ...keptView(now, located));
    else fill(element, ...choosing(now, located));
  }
  function keptView(now: Session, { match }: Located): HTMLElement[] {
    const changes = keptPlace(now)?.changes ?? [];
    const change = h("button", { type: "button", onclick: () => choose({ kind: "kept" }) }, "Change");
    return [
      h("div", { class: "lw-standing" }, h("p", { class: "lw-lead" }, `Lots live on ${placeText(match.list)}.`), change),
      ...(changes.length === 0 ? [] : [h("div", { class: "lw-caution" }, h("p", {}, h("strong", {}, "Since last time")), h("ul", {}, ...changes.map((sentence) => h("li", {}, sentence))))]),
    ];
  }
  function choosing(now: Session, located: Located | null): (HTMLElement | null)[] {
    const { place } = now.workbook;
    return [
      typeof place === "string" ? h("p", { class: "lw-caution" }, place) : null,
      ...now.found.refusals.map(({ sentence }) => h("p", { class: "lw-caution" }, sentence)),
      now.found.refusals.length > 0 ? h("div", { class: "lw-actions" }, h("button", { type: "button", onclick: () => void again() }, "Look again")) : null,
      places(now),
      ...(located ? chosenView(now, located) : []),
    ];
  }
  function places(now: Session): HTMLElement {
    const group = freshId("place");
    const chosen = choiceOf(now, draft);
    const kept = keptPlace(now);
    const proposals = now.found.proposals.filter(({ list }) => !(kept && list.sheet === kept.list.sheet && list.headingRow === kept.list.headingRow));
    const option = (choice: PlaceChoice, words: string, why: string | null): HTMLElement => {
      const isChosen = chosen !== null && same(choice, chosen);
      const [id, whyId] = [freshId("option"), freshId("why")];
      return h(
        "li",
        { class: "lw-option" },
        h("input", { type: "radio", name: group, id, checked: isChosen, "aria-describedby": why === null ? undefined : whyId, onchange: () => choose(choice) }),
        h("label", { for: id }, words),
        why === null ? null : h("p", { id: whyId, class: "lw-about" }, why),
      );
    };
    return h(
      "fieldset",
      { class: "lw-places" },
      h("legend", {}, "Where are your lots listed?"),
      h(
        "ul",
        { class: "lw-option-list" },
        ...(kept ? [option({ kind: "kept" }, placeText(kept.list), "As this workbook keeps it.")] : []),
        ...proposals.map(({ list, reason }, i) => option({ kind: "found", sheet: list.sheet, headingRow: list.headingRow }, placeText(list), i === 0 || isFound(chosen, list) ? `${reason}.` : null)),
        option({ kind: "new" }, "On a new sheet", null),
      ),
    );
  }
  function chosenView(now: Session, located: Located): HTMLElement[] {
    if (located.made) return [newSheetView(now, located)];
    view = matchView(located.base, correct);
    view.show(located.match);
    showNotes(located);
    return [view.element, notes];
  }
  function newSheetView(now: Session, located: Located): HTMLElement {
    const { name, unit } = newSheetOf(now, draft);
    const columns = h("p", { class: "lw-about" });
    const told = (): void => {
      draft.newSheet = { name: nameField.text(), unit: unitField.text() };
      const at = locate(session(), draft);
      nameField.say(nameFault(session(), nameField.text()));
      columns.textContent = `Its columns: ${(at ?? located).match.list.columns.map(({ heading }) => heading).join(", ")}.`;
    };
    const nameField = textField({ label: "Name of the sheet", value: name }, told);
    const unitField = choiceField({ label: "Weights in", choices: OWN_UNITS.map((one) => ({ value: one, label: one })), value: unit }, told);
    columns.textContent = `Its columns: ${located.match.list.columns.map(({ heading }) => heading).join(", ")}.`;
    return h("section", { class: "lw-fields", "aria-label": "The new sheet" }, nameField.element, unitField.element, columns);
  }
  function showNotes({ remarks, refusals }: Located): void {
    fill(notes, ...refusals.map((sentence) => h("p", { class: "lw-note lw-fault" }, sentence)), ...remarks.map((sentence) => h("p", { class: "lw-about" }, `${sentence}.`)));
  }
  function choose(choice: PlaceChoice): void {
    say("");
    draft.place = choice;
    draft.corrections = [];
    show();
    element.querySelector<HTMLElement>("input:checked")?.focus();
  }
  function correct(field: FieldId, correction: Correction | null): void {
    const others = draft.corrections.filter((one) => one.field !== field || (correction?.kind === "unit" && one.kind === "column"));
    draft.corrections = correction === null ? others : [...others, correction];
    if (draft.place === null) draft.place = choiceOf(session(), draft);
    const located = locate(session(), draft);
    if (!located) return;
    view?.show(located.match);
    showNotes(located);
  }
  async function again(): Promise<void> {
    await readAgain();
    show();
  }
  return {
    title: "Where lots live",
    element,
    enter: show,
    mayLeave() {
      const located = locate(session(), draft);
      if (!located) {
        say("Choose where your lots are listed");
        element.querySelector<HTMLElement>("input[type=radio]")?.focus();
        return false;
      }
      if (located.made) {
        const fault = nameFault(session(), newSheetOf(session(), draft).name);
        if (fault !== null) element.querySelector<HTMLElement>("input[type=text]")?.focus();
        return fault === null;
      }
      if (located.refusals.length > 0) {
        say(located.refusals[0] ?? "");
        return false;
      }
      return view ? view.isComplete(located.match) : true;
    },
    focus: () => false,
    close: () => undefined,
  };
}

const same = (a: PlaceChoice, b: PlaceChoice): boolean =>
  a.kind === "found" && b.kind === "found" ? a.sheet === b.sheet && a.headingRow === b.headingRow : a.kind === b.kind;

const isFound = (chosen: PlaceChoice | null, { sheet, headingRow }: { readonly sheet: string; readonly headingRow: number }): boolean =>
  chosen?.kind === "found" && chosen.sheet === sheet && chosen.headingRow === headingRow;

function nameFault({ workbook }: Session, name: string): string | null {
  if (workbook.sheets.some(({ info }) => info.name.toLowerCase() === name.toLowerCase())) return "The workbook has a sheet of that name: choose another";
  if (name === "" || name.length > 31) return "A sheet's name has 1 to 31 characters";
  return /[[\]:*?/\\]|^'|'$/.test(name) || /^history$/i.test(name) ? "A sheet's name has none of [ ] : * ? / \\, no apostrophe at its ends, and is not History" : null;
}
