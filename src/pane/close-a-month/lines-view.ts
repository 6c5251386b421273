import { fill, h } from "../dom";
import { type Choice, type FormField, choiceField, measuredField, textField } from "../form-field";
import { massChoices } from "../unit-choices";
import { type LineDraft, type LineField, LIQUOR, LOT, METALS, formOf, freshLine } from "./line-draft";

/** What a line comes to, or what is wrong with it. */
export interface LineTold {
  readonly faults: ReadonlyMap<LineField, string>;
  readonly comesTo: string;
  readonly isFault: boolean;
}

export interface LinesView {
  readonly element: HTMLElement;
  tell(told: readonly LineTold[]): void;
  /** Lots that can be counted as they came. */
  offer(lots: readonly Choice[]): void;
}

interface LinesWords {
  readonly title: string;
  readonly about: string;
  readonly add: string;
  readonly withLots: boolean;
}


/** Lines of stock that can be added and taken out. */
export function linesView({ title, about, add, withLots }: LinesWords, lines: LineDraft[], changed: () => void): LinesView {
  const list = h("ul", { class: "lw-stock" });
  const more = h("button", { type: "button", onclick: addLine }, add);
  let lots: readonly Choice[] = [];
  let shown: Card[] = [];

  function show(): void {
    shown = lines.map((line, i) => card(line, i));
    fill(list, ...shown.map(({ element }) => h("li", {}, element)));
  }
  function addLine(): void {
    lines.push(freshLine(lines.at(-1)?.kind));
    show();
    changed();
    shown.at(-1)?.focus();
  }
  function remove(i: number): void {
    lines.splice(i, 1);
    show();
    changed();
    (shown[Math.min(i, shown.length - 1)]?.focus ?? (() => more.focus()))();
  }
  function card(line: LineDraft, i: number): Card {
    return lineCard(line, `${title}, line ${i + 1}`, withLots, lots, changed, () => remove(i), () => {
      show();
      changed();
      shown[i]?.focus();
    });
  }

  show();
  return {
    element: h("section", { class: "lw-stocks", "aria-label": title }, h("h2", {}, title), h("p", { class: "lw-about" }, about), list, h("div", { class: "lw-actions" }, more)),
    tell: (told) => told.forEach((one, i) => shown[i]?.tell(one)),
    offer(now) {
      if (JSON.stringify(now) === JSON.stringify(lots)) return;
      lots = now;
      for (const one of shown) one.offer(lots);
    },
  };
}

interface Card {
  readonly element: HTMLElement;
  tell(told: LineTold): void;
  offer(lots: readonly Choice[]): void;
  focus(): void;
}

function lineCard(line: LineDraft, name: string, withLots: boolean, lots: readonly Choice[], changed: () => void, remove: () => void, reshaped: () => void): Card {
  const kinds = [...METALS, LIQUOR, ...(withLots ? [LOT] : [])].map((kind) => ({ value: kind, label: kind }));
  const kind = choiceField({ label: "What", choices: kinds, value: line.kind }, () => {
    line.kind = kind.text();
    reshaped();
  });
  const fields = new Map<LineField, FormField>();
  const text = (field: LineField, label: string, optional?: string): FormField => {
    const made = textField({ label, value: line[field], ...(optional === undefined ? {} : { optional }) }, () => {
      line[field] = made.text();
      changed();
    });
    fields.set(field, made);
    return made;
  };
  const weight = (): FormField => {
    const made = measuredField({ label: "Weight", value: line.weight, units: massChoices, unit: line.unit }, () => {
      line.weight = made.text();
      line.unit = made.unit();
      changed();
    });
    fields.set("weight", made);
    return made;
  };
  const lot = (): FormField => {
    const made = choiceField({ label: "Lot still in process", choices: lotChoices(lots), value: line.lot }, () => {
      line.lot = made.text();
      changed();
    });
    fields.set("lot", made);
    return made;
  };
  const form = formOf(line);
  const shown =
    form === "lot" ? [lot()]
    : form === "liquor" ? [text("litres", "Litres"), text("gramsPerLitre", "Silver in a litre, g"), text("uncertainty", "How far the test can be off", "such as 10%")]
    : [weight(), text("fineness", "Fineness")];
  const which = (): FormField => text("which", "Which", line.kind === "Other metal" ? "such as slimes" : "may stay empty");
  const folded = form === "lot" ? [] : form === "liquor" ? [which()] : [which(), text("uncertainty", "Its own uncertainty", "else one weighing and one assay")];
  const isOpen = line.which !== "" || line.kind === "Other metal" || (form === "metal" && line.uncertainty !== "");
  const comesTo = h("p", { class: "lw-comes-to" });
  return {
    element: h(
      "div",
      { class: "lw-stock-line", role: "group", "aria-label": name },
      kind.element,
      ...shown.map(({ element }) => element),
      folded.length === 0 ? null : h("details", { open: isOpen }, h("summary", {}, "More of it"), h("div", { class: "lw-fields" }, ...folded.map(({ element }) => element))),
      h("div", { class: "lw-actions" }, comesTo, h("button", { type: "button", class: "lw-quiet", "aria-label": `Take out ${name}`, onclick: remove }, "Take out")),
    ),
    tell(told) {
      for (const [field, made] of fields) made.say(told.faults.get(field) ?? null);
      comesTo.textContent = told.comesTo;
      comesTo.classList.toggle("lw-fault", told.isFault);
    },
    offer(now) {
      const select = fields.get("lot")?.element.querySelector("select");
      if (!select) return;
      fill(select, ...lotChoices(now).map(({ value, label }) => h("option", { value }, label)));
      select.value = line.lot;
    },
    focus: kind.focus,
  };
}

const lotChoices = (lots: readonly Choice[]): readonly Choice[] => [{ value: "", label: lots.length === 0 ? "none is" : "choose one" }, ...lots];
