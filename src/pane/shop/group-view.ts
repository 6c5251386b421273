import type { ShopFieldId } from "../../lots/shop";
import { type ShopField, type ShopGroup, leftOut } from "../../lots/shop-fields";
import { fill, h } from "../dom";
import type { Notation } from "../notation";
import { type FieldView, fieldView } from "./field-view";
import type { Typed } from "./memory";

export interface GroupView {
  readonly group: ShopGroup;
  readonly element: HTMLDetailsElement;
  readonly views: ReadonlyMap<ShopFieldId, FieldView>;
  /** With the sentence of each fault. */
  show(faults: ReadonlyMap<ShopFieldId, string>): void;
}

/** Fields that belong together; folded, its line still says what is told. */
export function groupView(group: ShopGroup, notation: Notation, changed: (id: ShopFieldId) => void): GroupView {
  const told = h("span", { class: "lw-about lw-told" });
  const left = h("p", { class: "lw-about" });
  const views = new Map(group.fields.map((field) => [field.id, fieldView(field, notation, () => changed(field.id))] as const));
  const typed = (id: ShopFieldId): Typed => views.get(id)?.typed() ?? { text: "" };
  const element = h(
    "details",
    {},
    h("summary", {}, h("span", { class: "lw-group-title" }, group.title), told),
    h(
      "div",
      { class: "lw-fields" },
      h("p", { class: "lw-about" }, group.about),
      group.caution === undefined ? null : h("p", { class: "lw-caution" }, group.caution),
      ...[...views.values()].map((view) => view.element),
      left,
    ),
  );
  return {
    group,
    element,
    views,
    show(faults) {
      for (const [id, view] of views) view.say(faults.get(id) ?? null);
      const wrong = group.fields.filter(({ id }) => faults.has(id));
      const filled = group.fields.filter(({ id }) => typed(id).text !== "");
      fill(told, ...(wrong.length > 0 ? [h("span", { class: "lw-fault" }, `▲ ${wrong.length} to mend`), ". "] : []), filled.length === 0 ? "Nothing told yet" : toldText(filled, typed));
      const missing = leftOut(group, new Set(filled.map(({ id }) => id)));
      left.textContent = missing.length === 0 ? "" : `Missing until it is told: ${missing.join("; ")}.`;
      left.hidden = missing.length === 0;
    },
  };
}

/** What is told, on one line; a number says what it is. */
function toldText(fields: readonly ShopField[], typed: (id: ShopFieldId) => Typed): string {
  const isPlain = ({ kind }: ShopField): boolean => kind === "line" || kind === "lines";
  return fields.map((field, i) => `${isPlain(field) ? "" : `${i === 0 ? field.title : field.title.toLowerCase()} `}${short(field.kind, typed(field.id))}`).join("; ");
}

function short(kind: ShopField["kind"], { text, unit = "" }: Typed): string {
  const plain = text.split(/\s*\n\s*/).join(", ");
  const sign = kind === "per thousand" && /\d$/.test(plain) ? "‰" : unit === "" ? "" : kind === "per mass" ? ` per ${unit}` : ` ${unit}`;
  return `${plain}${sign}`;
}
