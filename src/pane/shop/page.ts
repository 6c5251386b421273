import { type KeptShop, type Shop, type ShopFieldId, type ShopValue, readKept, shopChanges } from "../../lots/shop";
import { type ShopField, shopFields, shopGroups } from "../../lots/shop-fields";
import { sheetKey } from "../../workbook/changes";
import { apply, plan } from "../../workbook/plan";
import { SETTINGS_SHEET, readSettings } from "../../workbook/settings";
import { h } from "../dom";
import { userNotation } from "../notation";
import type { Page } from "../page";
import type { PaneHost } from "../pane-host";
import { followSelection } from "../selection";
import { status } from "../status";
import type { FieldView } from "./field-view";
import { groupView } from "./group-view";
import { draftOf } from "./memory";
import { type Wrong, readField, typedOf } from "./read-field";

const NOTHING: KeptShop = { shop: {}, isReadable: true };

/** How the shop works, kept in the workbook. */
export function shopPage(host: PaneHost, leave: () => void): Page {
  const { port } = host;
  const notation = userNotation(host);
  const draft = draftOf(port);
  const heading = h("h1", { tabindex: -1 }, "The shop");
  const state = h("p", { class: "lw-state", role: "status" }, "Reading what this workbook keeps …");
  const coming = h("p", { class: "lw-about" });
  const told = status();
  const keep = h("button", { type: "submit", class: "lw-primary", disabled: true }, "Keep in this workbook");
  const groups = shopGroups.map((group) => groupView(group, notation, changed));
  const views: ReadonlyMap<ShopFieldId, FieldView> = new Map(groups.flatMap((group) => [...group.views]));
  const form = h(
    "form",
    { class: "lw-page lw-shop", novalidate: true, onsubmit: submitted },
    h("div", { class: "lw-top" }, h("button", { type: "button", class: "lw-back", onclick: leave }, "All tasks"), heading),
    h("p", {}, "Kept in this workbook, so that it travels with it. Leave empty what you do not know: nothing is guessed, and what needs it says so."),
    state,
    h("div", { class: "lw-groups" }, ...groups.map(({ element }) => element)),
    h("section", { class: "lw-bar", "aria-label": "Keeping" }, coming, h("div", { class: "lw-actions" }, keep), told.element),
  );
  let kept = NOTHING;
  /** By their keys, each as the workbook spells it. */
  let sheets: ReadonlyMap<string, string> | null = null;
  let wasLooked = false;
  let isBusy = false;
  let isClosed = false;

  function read(field: ShopField): ShopValue | Wrong | null {
    const value = readField(field, views.get(field.id)?.typed() ?? { text: "" }, notation);
    if (!value || !("cell" in value) || !sheets) return value;
    const sheet = sheets.get(sheetKey(value.sheet));
    return sheet === undefined ? { fault: `This workbook has no sheet ‘${value.sheet}’: name the sheet on which ${value.cell} stands` } : { ...value, sheet };
  }
  const isOther = (field: ShopField): boolean => JSON.stringify(read(field)) !== JSON.stringify(kept.shop[field.id] ?? null);

  function changed(id: ShopFieldId): void {
    const view = views.get(id);
    if (view) draft.typed.set(id, view.typed());
    show();
  }
  function show(): void {
    const faults = new Map(shopFields.flatMap((field): [ShopFieldId, string][] => {
      const value = read(field);
      return value && "fault" in value ? [[field.id, value.fault]] : [];
    }));
    groups.forEach((group) => group.show(faults));
    const others = shopFields.filter(isOther);
    coming.textContent = `To be written to the hidden sheet ${SETTINGS_SHEET}: ${listed(others)}.`;
    coming.hidden = others.length === 0;
    keep.disabled = !wasLooked;
  }

  async function load(): Promise<void> {
    const [now, infos] = [await readKept(port), await port.sheets()];
    if (isClosed) return;
    kept = now;
    sheets = new Map(infos.map(({ name }) => [sheetKey(name), name]));
    for (const field of shopFields) views.get(field.id)?.set(draft.typed.get(field.id) ?? typedOf(field, kept.shop[field.id], notation));
    const isTold = Object.keys(kept.shop).length > 0;
    const isFirst = !isTold && draft.typed.size === 0;
    for (const { group, element } of groups) element.open = draft.open?.has(group.title) ?? (isFirst && group === shopGroups[0]);
    say(stateText(isTold));
    if (draft.written?.port === port) told.say(draft.written.sentence, takingBack);
    show();
  }
  function stateText(isTold: boolean): string {
    if (!kept.isReadable) return "What this workbook keeps of the shop was changed by hand and cannot all be read. Fill in what is missing below and keep it: it is written anew.";
    if (shopFields.some(isOther)) return "There are changes here that the workbook does not keep yet.";
    return isTold ? "" : "This workbook does not know your shop yet. Begin with its name and the usual terms: new lots and quotes start from them. What the plan of a lot needs can follow.";
  }
  function say(sentence: string): void {
    state.textContent = sentence;
    state.hidden = sentence === "";
  }

  function submitted(event: Event): void {
    event.preventDefault();
    void guarded(write);
  }
  async function write(): Promise<void> {
    const wrong = shopFields.find((field) => "fault" in (read(field) ?? {}));
    if (wrong) {
      goTo(wrong.id);
      return told.say(`Not kept: mend ${wrong.title.toLowerCase()} first`);
    }
    if (JSON.stringify(await readKept(port)) !== JSON.stringify(kept)) {
      await load();
      return told.say("Not kept: what the workbook keeps has changed meanwhile. Look at it again, then keep it");
    }
    if (kept.isReadable && !shopFields.some(isOther)) return told.say("Nothing to write: this workbook keeps all that stands here", draft.written ? takingBack : undefined);
    const shop = Object.fromEntries(shopFields.map((field) => [field.id, read(field)]).filter(([, value]) => value !== null)) as Shop;
    const typed = new Map(draft.typed);
    const { undo } = await apply(port, await plan(port, await shopChanges(port, shop)), () => true);
    const settings = await keptTexts().catch(async (fault: unknown) => {
      // Without it nobody could tell later whether another task has kept something.
      await undo();
      throw fault;
    });
    // What was typed while it was being written is still to be kept.
    for (const [id, one] of typed) if (draft.typed.get(id) === one) draft.typed.delete(id);
    draft.written = {
      port,
      sentence: `Kept in this workbook, on its hidden sheet ${SETTINGS_SHEET}`,
      async undo() {
        if ((await keptTexts()) !== settings) throw new Error("The workbook keeps other things of Lotwright’s since then: change the shop here and keep it again");
        await undo();
        for (const [id, one] of typed) if (!draft.typed.has(id)) draft.typed.set(id, one);
      },
    };
    told.say(draft.written.sentence, takingBack);
    await loadAnew();
  }
  /** What was done stays done where it cannot be read anew. */
  const loadAnew = (): Promise<void> => load().catch((thrown: unknown) => say(`What the workbook keeps now cannot be shown here: ${messageOf(thrown)}`));
  /** Undoing takes the whole hidden sheet back, and must not take along what another task has put there. */
  const keptTexts = async (): Promise<string> => JSON.stringify([...(await readSettings(port)).values]);
  function goTo(id: ShopFieldId): void {
    const group = groups.find((one) => one.views.has(id));
    if (group) group.element.open = true;
    views.get(id)?.focus();
  }
  const takingBack = { label: "Undo", run: () => void guarded(takeBack, (sentence) => told.say(sentence, takingBack)) };
  async function takeBack(): Promise<void> {
    await draft.written?.undo();
    draft.written = null;
    told.say("Undone: the workbook keeps what it kept before");
    await loadAnew();
    keep.focus();
  }
  /** What the workbook refuses is said, whatever it is. */
  async function guarded(step: () => Promise<void>, say: (sentence: string) => void = (sentence) => told.say(sentence)): Promise<void> {
    if (isBusy) return;
    isBusy = true;
    try {
      await step();
    } catch (thrown) {
      say(messageOf(thrown));
    } finally {
      isBusy = false;
      wasLooked = true;
      if (!isClosed) show();
    }
  }

  for (const { element } of groups) element.addEventListener("toggle", () => (draft.open = new Set(groups.filter((one) => one.element.open).map(({ group }) => group.title))));
  void guarded(load, say);
  const stop = followSelection(port, (selected) => {
    for (const view of views.values()) view.offer?.(typeof selected === "string" || sheetKey(selected.sheet) === sheetKey(SETTINGS_SHEET) ? null : selected);
  });
  return {
    element: form,
    focus: () => heading.focus(),
    back: leave,
    close() {
      isClosed = true;
      stop();
    },
  };
}

const messageOf = (thrown: unknown): string => (thrown instanceof Error ? thrown.message : String(thrown));

const MOST_NAMED = 4;

function listed(fields: readonly ShopField[]): string {
  const named = fields.slice(0, fields.length > MOST_NAMED + 1 ? MOST_NAMED : fields.length).map(({ title }) => title.toLowerCase());
  return named.length < fields.length ? `${named.join(", ")} and ${fields.length - named.length} more` : named.join(", ");
}
