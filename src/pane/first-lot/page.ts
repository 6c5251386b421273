import type { Place } from "../../workbook/port";
import { areaText } from "../../workbook/xlsx/address";
import { readArgument } from "../argument";
import { fill, h } from "../dom";
import { type FormField, measuredField, textField } from "../form-field";
import { userNotation, writtenNumber } from "../notation";
import type { Page } from "../page";
import type { PaneHost } from "../pane-host";
import { review } from "../review";
import { type Selected, followSelection } from "../selection";
import { massChoices } from "../unit-choices";
import { workingParts } from "../working-parts";
import { computeLot } from "./compute-lot";
import { type FreePlace, freePlace } from "./free-place";
import { BLOCK, type FirstLot, lotBlock } from "./lot-block";
import { EXAMPLE, memoryOf } from "./memory";
import { markSeen } from "./seen";

/** A lot from weight to worth, for those who have never computed one here. */
export function firstLotPage(host: PaneHost, leave: () => void): Page {
  const { port } = host;
  const notation = userNotation(host);
  const memory = memoryOf(port, (value) => writtenNumber(value, notation));
  const heading = h("h1", { tabindex: -1 }, "A first lot");
  const invented = h("p", { class: "lw-about" }, "The numbers are an invented example: type your own over them, or leave them.");
  const weight = measuredField({ label: "Weight", units: massChoices, unit: memory.unit, value: memory.weight }, changed);
  const fineness = textField({ label: "Fineness", about: "Parts per thousand: sterling is 925.", value: memory.fineness }, changed);
  const price = textField({ label: "Price of a troy ounce (ozt)", value: memory.price }, changed);
  const fields: readonly (readonly [name: string, field: FormField])[] = [["weight", weight], ["fineness", fineness], ["price", price]];
  const result = h("output", { class: "lw-result lw-lot-result" });
  const parts = h("div", {});
  const working = h("details", { class: "lw-working" }, h("summary", { "aria-keyshortcuts": "Alt+W" }, "Working (Alt+W)"), parts);
  const where = h("p", { class: "lw-about", "aria-live": "polite" });
  const put = h("button", { type: "submit", class: "lw-primary" }, "Put it into the sheet");
  const writing = review(port, notation, memory, written);
  const offer = h("div", { class: "lw-offer" }, where, h("div", { class: "lw-actions" }, put));
  const on = h("button", { type: "button", onclick: leave }, "See all tasks");
  const next = h("div", { class: "lw-offer", hidden: true }, h("p", { class: "lw-about" }, "The formulas are live: change the weight in the sheet, and they follow. “Set up a lot” does this in your own list; “Explain a cell” shows the working of any cell."), h("div", { class: "lw-actions" }, on));
  let selected: Selected | null = null;
  let problem = "";
  let target: Place | null = null;
  let isClosed = false;

  function changed(): void {
    Object.assign(memory, { weight: weight.text(), unit: weight.unit(), fineness: fineness.text(), price: price.text() });
    writing.close();
    put.hidden = false;
    offer.hidden = false;
    next.hidden = true;
    show();
  }

  /** The lot as it is typed; null where a field is not a number or a word yet, which is said there. */
  function typed(): FirstLot | null {
    const values = fields.map(([, field]) => {
      const argument = readArgument(field.text(), notation);
      const fault = argument.kind === "unreadable" ? argument.sentence : argument.kind === "nothing" ? "Still needed" : argument.kind === "value" ? null : "Write a number here";
      field.say(fault, argument.kind !== "nothing");
      return argument.kind === "value" ? argument.value : null;
    });
    const [of, fine, per] = values;
    if (of === null || of === undefined || fine === null || fine === undefined || per === null || per === undefined) return null;
    const unit = weight.unit();
    return { weight: of, unit, fineness: fine, price: per, isInvented: { lot: of === EXAMPLE.weight && unit === EXAMPLE.unit && fine === EXAMPLE.fineness, price: per === EXAMPLE.price } };
  }

  /** What is typed, when it computes. */
  function show(): FirstLot | null {
    const lot = typed();
    const computed = lot && computeLot(lot);
    if (computed && "sentence" in computed) (fields.find(([name]) => name === computed.parameter)?.[1] ?? weight).say(computed.sentence);
    const isGood = lot !== null && computed !== null && !("sentence" in computed);
    invented.hidden = lot !== null && !lot.isInvented.lot && !lot.isInvented.price;
    working.hidden = !isGood;
    if (!isGood) fill(result, h("span", { class: "lw-waiting" }, "The result stands here as soon as each field is right"));
    else {
      const shown = (value: number, decimals: number): string => value.toFixed(decimals).replace(".", notation.decimal);
      fill(
        result,
        h("span", { class: "lw-of" }, "Fine weight"),
        h("span", { class: "lw-value" }, shown(computed.fine, 3)),
        h("span", { class: "lw-unit" }, " ozt"),
        h("span", { class: "lw-of" }, "Worth at that price"),
        h("span", { class: "lw-value" }, shown(computed.worth, 2)),
      );
      fill(parts, ...computed.workings.map(({ lines }) => workingParts(lines.filter(({ part }) => part !== "source"))));
    }
    return isGood ? lot : null;
  }

  const placeNow = async (): Promise<FreePlace | string> => (selected ? freePlace(port, selected, BLOCK) : problem);

  async function showPlace(): Promise<void> {
    const from = selected;
    const place = await placeNow().catch(message);
    if (from !== selected || isClosed) return;
    where.textContent = typeof place === "string" || !from ? String(place) : `It goes into ${placeText(from, place)}, ${place.isSelected ? "from the selected cell on" : `below what the sheet holds, since there is no room at ${from.cell}`}.`;
  }

  async function reviewLot(): Promise<void> {
    const lot = show();
    if (!lot) return fields.find(([, field]) => field.element.querySelector(".lw-note")?.textContent !== "")?.[1].focus();
    const place = await placeNow().catch(message);
    if (typeof place === "string" || !selected) return writing.say(place === "" ? "Select an empty cell first" : String(place));
    const cells = lotBlock(lot, selected.sheet, place.area);
    target = { sheet: selected.sheet, range: areaText(place.area) };
    put.hidden = true;
    await writing.show(
      cells.map(({ label: _label, ...write }) => write),
      {
        action: "Write the lot",
        written: `The lot is in ${placeText(selected, place)}`,
        about: (_sheet, cell) => ({ heading: cells.find((one) => one.cell === cell)?.label ?? "", group: "lot" }),
        groups: [{ id: "lot", title: placeText(selected, place) }],
      },
    );
  }
  function written(isWritten: boolean): void {
    put.hidden = false;
    offer.hidden = isWritten;
    next.hidden = !isWritten;
    (isWritten ? on : put).focus();
    if (!isWritten) return void showPlace();
    markSeen();
    if (target) port.select(target).catch((thrown: unknown) => writing.say(message(thrown)));
  }
  function onKey(event: KeyboardEvent): void {
    // A Mac gives another letter with the key.
    if (!event.altKey || event.ctrlKey || event.metaKey || event.code !== "KeyW") return;
    event.preventDefault();
    working.open = !working.open;
    if (working.open) working.querySelector("summary")?.focus();
  }

  show();
  const unfollow = followSelection(port, (now) => {
    [selected, problem] = typeof now === "string" ? [null, now] : [now, ""];
    if (writing.close()) put.hidden = false;
    void showPlace();
  });
  return {
    element: h(
      "div",
      { class: "lw-page lw-first-lot", onkeydown: (event) => onKey(event as KeyboardEvent) },
      h("div", { class: "lw-top" }, h("button", { type: "button", class: "lw-back", onclick: leave }, "All tasks"), heading),
      invented,
      h("form", { "aria-label": "A first lot", novalidate: true, onsubmit: (event) => void (event.preventDefault(), void reviewLot()) }, h("div", { class: "lw-fields" }, ...fields.map(([, { element }]) => element)), result, working, offer),
      writing.element,
      next,
    ),
    focus: () => weight.focus(),
    back: () => {
      if (!writing.close()) return leave();
      put.hidden = false;
      put.focus();
    },
    close() {
      isClosed = true;
      unfollow();
    },
  };
}

const placeText = ({ sheet }: Selected, { area }: FreePlace): string => `${areaText(area)} of ${sheet}`;

const message = (thrown: unknown): string => (thrown instanceof Error ? thrown.message : String(thrown));
