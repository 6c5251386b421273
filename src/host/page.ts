import "./charts";
import { REFERENCE_PAGE } from "../catalogue/reference-address";
import { h } from "../pane/dom";
import type { PaneFiles, PaneHost } from "../pane/pane-host";
import { CellStatus } from "./cell-status";
import type { Changes } from "./changes";
import { download } from "./download";
import { type GridView, showGrid } from "./grid-view";
import { pruneMenus } from "./menus";
import { Notices } from "./notices";
import { OpenBook } from "./open-book";
import { onRefusal } from "./refusals";
import { type Sample, sampleBytes, samples } from "./samples";
import { keepTabsAsTheyAre } from "./sheet-tabs";
import { TopBar } from "./top-bar";
import { watchDrops } from "./watch-drops";

/** The whole page: bar, grid and pane, and one workbook at a time. */
export class Page {
  readonly #notices = new Notices();
  readonly #status = new CellStatus();
  readonly #grid = h("section", { class: "grid", "aria-label": "Workbook" });
  readonly #paneRoot = h("div");
  readonly #pane = h("aside", { class: "pane", "aria-label": "Pane" }, this.#paneRoot);
  readonly #busy = h("p", { class: "busy", role: "status", hidden: true });
  readonly #bar: TopBar;
  #book: OpenBook | null = null;
  #view: GridView | null = null;
  #closePane: (() => void) | null = null;

  constructor(root: HTMLElement) {
    this.#bar = new TopBar({
      openSample: (sample) => void this.#openSample(sample),
      openFile: (file) => void this.#openFile(file),
      save: () => void this.#save(),
      undo: () => void this.#book?.model.dispatch("REQUEST_UNDO"),
      redo: () => void this.#book?.model.dispatch("REQUEST_REDO"),
      showPane: (isShown) => {
        this.#pane.hidden = !isShown;
      },
    });
    root.append(this.#bar.element, h("main", {}, this.#grid, this.#pane), this.#notices.element, this.#status.element, this.#busy);
    watchDrops(root, (file) => void this.#openFile(file));
    keepTabsAsTheyAre(this.#grid);
    // The grid measures itself when the window changes, but not when a notice or the pane takes room from it.
    new ResizeObserver(() => window.dispatchEvent(new Event("resize"))).observe(this.#grid);
    window.addEventListener("keydown", (event) => this.#onKey(event), { capture: true });
    window.addEventListener("beforeunload", (event) => {
      if (this.#book?.isChanged) event.preventDefault();
    });
  }

  async start(): Promise<void> {
    pruneMenus();
    try {
      const list = await samples();
      this.#bar.listSamples(list);
      if (list[0]) await this.#openSample(list[0]);
    } catch (fault) {
      this.#notices.tell(sentence(fault, "Opening the samples"), "fault");
    }
  }

  async #openSample(sample: Sample): Promise<void> {
    await this.#open(sample.file, () => sampleBytes(sample));
  }

  async #openFile(file: File): Promise<void> {
    await this.#open(file.name, async () => new Uint8Array(await file.arrayBuffer()));
  }

  /** What is open stays open until the other file is seen to be good. */
  async #open(name: string, read: () => Promise<Uint8Array>): Promise<void> {
    if (!(await this.#mayLeave(name))) return;
    await this.#whileBusy(`Opening ${name}`, async () => {
      const book = new OpenBook(name, await read());
      this.#view?.remove();
      this.#notices.clear();
      this.#book = book;
      this.#view = await showGrid(this.#grid, book.model, {
        tell: (text) => this.#notices.tell(text),
        ask: (question, yes, no) => void this.#notices.ask(question, [], ["Yes"]).then((answer) => (answer ? yes() : no?.())),
      });
      onRefusal(book.model, (text) => this.#notices.tell(text));
      book.model.on("update", this, () => this.#showState());
      this.#status.follow(book.model);
      this.#showState();
      this.#warnOf(book);
      await this.#openPane(book);
      this.#view.focus();
    });
  }

  async #mayLeave(name: string): Promise<boolean> {
    this.#view?.finishTyping();
    if (!this.#book?.isChanged) return true;
    const answer = await this.#notices.ask(`Save ${this.#book.name} first?`, [`It has changes that are not saved, and opening ${name} closes it.`], ["Save", "Leave them"]);
    return answer === "Leave them" || (answer === "Save" && (await this.#save()));
  }

  #warnOf({ hasLooks, differing, name }: OpenBook): void {
    if (!hasLooks) this.#notices.tell(`The formats and charts of ${name} cannot be shown here: they stay in the file as they are`);
    if (differing.length > 0)
      this.#notices.tell(`This grid computes ${some(differing)} otherwise than the program that saved the file, or cannot compute it: the stored ${differing.length > 1 ? "values stay" : "value stays"} in the file`);
  }

  async #openPane(book: OpenBook): Promise<void> {
    const { mountPane } = await import("../pane/mount");
    this.#closePane?.();
    const files: PaneFiles = {
      current: async () => ({ name: book.name, bytes: book.patched() }),
      handOver: async (name, bytes) => {
        download(name, bytes);
        return `look for ${name} among your downloads`;
      },
    };
    const host: PaneHost = { port: book.port, files, separator: ",", decimal: ".", referencePage: REFERENCE_PAGE };
    this.#closePane = mountPane(this.#paneRoot, host);
  }

  /** True when the file was handed to the browser. */
  async #save(): Promise<boolean> {
    const book = this.#book;
    if (!book) return false;
    this.#view?.finishTyping();
    return this.#whileBusy(`Saving ${book.name}`, async () => {
      const changes = book.changes();
      const bytes = book.patched();
      if (changes.leftBehind.length === 0 && !book.isNew(bytes)) {
        this.#notices.tell(`Nothing has changed in ${book.name} since it was ${book.isChanged ? "opened" : "opened or saved"}: there is nothing to save`);
        return false;
      }
      if (!(await this.#agrees(book, changes))) return false;
      download(book.name, bytes);
      book.saved(bytes);
      this.#showState();
      this.#notices.tell(`Saved ${book.name}${changes.cells.length > 0 ? ` with ${count(changes.cells.length, "changed cell")}` : ""}; look for it among your downloads`);
      return true;
    });
  }

  /** Asks first when something would not be in the saved file. */
  async #agrees({ name }: OpenBook, { leftBehind, notComputed }: Changes): Promise<boolean> {
    const lines = [
      ...(leftBehind.length > 0 ? [`Saving writes what cells hold. Changes of ${leftBehind.join("; ")} stay behind: make them in Excel.`] : []),
      ...(notComputed.length > 0 ? [`The stored results of ${some(notComputed)} stay as they are and may be out of date until Excel computes them: this grid does not compute them as Excel does.`] : []),
    ];
    this.#busy.hidden = true;
    return lines.length === 0 || (await this.#notices.ask(`Save ${name} all the same?`, lines, ["Save"])) === "Save";
  }

  #showState(): void {
    const book = this.#book;
    if (book) this.#bar.show({ name: book.name, isChanged: book.isChanged, canUndo: book.model.getters.canUndo(), canRedo: book.model.getters.canRedo() });
  }

  async #whileBusy(what: string, work: () => Promise<unknown>): Promise<boolean> {
    this.#busy.textContent = `${what} …`;
    this.#busy.hidden = false;
    await painted();
    try {
      return (await work()) !== false;
    } catch (fault) {
      this.#notices.tell(sentence(fault, what), "fault");
      return false;
    } finally {
      this.#busy.hidden = true;
    }
  }

  #onKey(event: KeyboardEvent): void {
    const key = event.key.toLowerCase();
    if ((event.ctrlKey || event.metaKey) && !event.altKey && key === "s") {
      event.preventDefault();
      event.stopPropagation();
      void this.#save();
    } else if (key === "f6") {
      event.preventDefault();
      event.stopPropagation();
      this.#moveFocus(event.shiftKey ? -1 : 1);
    }
  }

  /** The grid keeps the Tab key for itself, so F6 leads out of it, as in Excel. */
  #moveFocus(by: 1 | -1): void {
    const places: [HTMLElement, () => void][] = [
      [this.#bar.element, () => this.#bar.focus()],
      [this.#grid, () => this.#view?.focus()],
      [this.#pane, () => this.#pane.querySelector<HTMLElement>("input, button, a, select, textarea")?.focus()],
    ];
    const shown = places.filter(([element]) => !element.hidden);
    const at = shown.findIndex(([element]) => element.contains(document.activeElement));
    shown[(at + by + shown.length) % shown.length]?.[1]();
  }
}

/** Faults that were foreseen are sentences of ours; the others are told with the file they happened on. */
function sentence(fault: unknown, what: string): string {
  if (fault instanceof Error && /^Cannot /.test(fault.message)) return fault.message;
  console.error(fault);
  return `${what} failed: the fault is in Lotwright or in its grid, please report it (${String(fault)})`;
}

const count = (n: number, what: string): string => `${n} ${what}${n === 1 ? "" : "s"}`;

/** A few of many places. */
const some = (places: readonly string[]): string => places.slice(0, 3).join(", ") + (places.length > 3 ? ` and ${places.length - 3} more` : "");

/** Until the browser has drawn what was last put on the page. */
const painted = (): Promise<void> => new Promise((done) => requestAnimationFrame(() => setTimeout(done)));
