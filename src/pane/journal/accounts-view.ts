import { type AccountId, type Accounts, accountChanges, accountFields, accountsWith, readAccounts } from "../../journal/accounts";
import { apply, plan } from "../../workbook/plan";
import type { BookPort } from "../../workbook/port";
import { SETTINGS_SHEET, readSettings } from "../../workbook/settings";
import { fill, h } from "../dom";
import { textField } from "../form-field";
import { status } from "../status";
import type { Draft } from "./memory";

export interface AccountsView {
  readonly element: HTMLElement;
  /** As they stand in the fields. */
  accounts(): Accounts;
  /** Reads what the workbook keeps, and shows it with what was typed and is not kept yet. */
  load(): Promise<void>;
}

/** The names that the books use for each account, kept in the workbook. */
export function accountsView(port: BookPort, draft: Draft, changed: () => void): AccountsView {
  const told = status();
  const state = h("span", { class: "lw-about" });
  const keep = h("button", { type: "button", onclick: () => void guarded(write) }, "Keep these names");
  const fields = new Map(accountFields.map(({ id, title, about, usual }) => [id, textField({ label: title, about, suggestions: [usual] }, () => typed(id))] as const));
  const element = h(
    "details",
    { class: "lw-accounts", ontoggle: () => (draft.isNaming = element.open) },
    h("summary", {}, "Names of the accounts ", state),
    h("div", { class: "lw-fields" }, h("p", { class: "lw-about" }, "As your books call them. A name that is left empty becomes ours again."), ...[...fields.values()].map((field) => field.element), h("div", { class: "lw-actions" }, keep), told.element),
  );
  let kept: Accounts = accountsWith({});
  let isBusy = false;

  const accounts = (): Accounts => accountsWith(Object.fromEntries([...fields].map(([id, field]) => [id, field.text()])) as Partial<Record<AccountId, string>>);
  const isOther = (): boolean => JSON.stringify(accounts()) !== JSON.stringify(kept);
  function typed(id: AccountId): void {
    draft.names.set(id, fields.get(id)?.text() ?? "");
    show();
    changed();
  }
  function show(): void {
    fill(state, isOther() ? "changed, not kept yet" : JSON.stringify(kept) === JSON.stringify(accountsWith({})) ? "ours, until you name yours" : "");
    keep.disabled = !isOther();
  }
  async function load(): Promise<void> {
    kept = await readAccounts(port);
    for (const [id, field] of fields) field.set(draft.names.get(id) ?? kept[id]);
    element.open = draft.isNaming;
    if (draft.kept.written?.port === port) told.say(draft.kept.written.sentence, takingBack);
    show();
  }
  async function write(): Promise<void> {
    const names = new Map(draft.names);
    const { undo } = await apply(port, await plan(port, await accountChanges(port, accounts())), () => true);
    const settings = await keptTexts().catch(async (fault: unknown) => {
      // Without it nobody could tell later whether another task has kept something.
      await undo();
      throw fault;
    });
    draft.names.clear();
    draft.kept.written = {
      port,
      sentence: `Kept in this workbook, on its hidden sheet ${SETTINGS_SHEET}`,
      async undo() {
        if ((await keptTexts()) !== settings) throw new Error("The workbook keeps other things of Lotwright’s since then: change the names here and keep them again");
        await undo();
        for (const [id, name] of names) if (!draft.names.has(id)) draft.names.set(id, name);
      },
    };
    told.say(draft.kept.written.sentence, takingBack);
    await loadAnew();
    changed();
  }
  /** What was done stays done where it cannot be read anew. */
  const loadAnew = (): Promise<void> => load().catch((thrown: unknown) => void fill(state, `what the workbook keeps now cannot be shown here: ${messageOf(thrown)}`));
  /** Undoing takes the whole hidden sheet back, and must not take along what another task has put there. */
  const keptTexts = async (): Promise<string> => JSON.stringify([...(await readSettings(port)).values]);
  const takingBack = { label: "Undo", run: () => void guarded(takeBack, true) };
  async function takeBack(): Promise<void> {
    await draft.kept.written?.undo();
    draft.kept.written = null;
    told.say("Undone: the workbook keeps what it kept before");
    await loadAnew();
    fields.get(accountFields[0]?.id ?? "metal")?.focus();
  }
  async function guarded(step: () => Promise<void>, isTakingBack = false): Promise<void> {
    if (isBusy) return;
    isBusy = true;
    try {
      await step();
    } catch (thrown) {
      told.say(messageOf(thrown), isTakingBack ? takingBack : undefined);
    } finally {
      isBusy = false;
    }
  }
  return { element, accounts, load };
}

const messageOf = (thrown: unknown): string => (thrown instanceof Error ? thrown.message : String(thrown));
