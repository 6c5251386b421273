import { fill, h } from "../pane/dom";
import type { Sample } from "./samples";

export interface Deeds {
  openSample(sample: Sample): void;
  openFile(file: File): void;
  save(): void;
  undo(): void;
  redo(): void;
  showPane(isShown: boolean): void;
}

export interface BookState {
  readonly name: string;
  readonly isChanged: boolean;
  readonly canUndo: boolean;
  readonly canRedo: boolean;
}

/** The page's own bar: which file is open, and what can be done with it. */
export class TopBar {
  readonly element: HTMLElement;
  readonly #name = h("span", { class: "file-name" });
  readonly #marker = h("span", { class: "changed" });
  readonly #samples: HTMLSelectElement;
  readonly #file: HTMLInputElement;
  readonly #undo: HTMLButtonElement;
  readonly #redo: HTMLButtonElement;
  readonly #pane: HTMLButtonElement;

  constructor(private readonly deeds: Deeds) {
    this.#samples = h("select", { "aria-label": "Open a sample workbook" });
    this.#file = h("input", { type: "file", accept: ".xlsx", hidden: true, onchange: () => this.#choose() });
    this.#undo = button("Undo", "Undo (Ctrl+Z)", () => deeds.undo());
    this.#redo = button("Redo", "Redo, or repeat the last change (Ctrl+Y)", () => deeds.redo());
    this.#pane = button("Pane", "Show or hide the pane (F6 moves between bar, sheet and pane)", () => this.togglePane());
    this.element = h(
      "header",
      { class: "bar" },
      h("h1", {}, "Lotwright"),
      h("p", { class: "file" }, this.#name, this.#marker),
      h(
        "div",
        { class: "deeds", role: "group", "aria-label": "Workbook" },
        this.#samples,
        button("Open…", "Open an .xlsx file of your own", () => this.#file.click()),
        button("Save", "Save (Ctrl+S): downloads the file with your changes in it", () => deeds.save()),
        h("span", { class: "gap" }),
        this.#undo,
        this.#redo,
        h("span", { class: "gap" }),
        this.#pane,
        this.#file,
      ),
    );
    // A press with the mouse leaves the keyboard where it was: in the cells.
    this.element.addEventListener("mousedown", (event) => {
      if ((event.target as Element).closest("button")) event.preventDefault();
    });
    this.togglePane(true);
  }

  listSamples(samples: readonly Sample[]): void {
    const options = samples.map(({ title }, i) => h("option", { value: i }, title));
    fill(this.#samples, h("option", { value: "", selected: true }, "Samples"), ...options);
    this.#samples.onchange = () => {
      const sample = samples[Number(this.#samples.value)];
      this.#samples.value = "";
      if (sample) this.deeds.openSample(sample);
    };
  }

  show({ name, isChanged, canUndo, canRedo }: BookState): void {
    this.#name.textContent = name;
    this.#marker.textContent = isChanged ? "changed, not saved" : "";
    this.#undo.disabled = !canUndo;
    this.#redo.disabled = !canRedo;
    document.title = `${isChanged ? "• " : ""}${name} – Lotwright`;
  }

  togglePane(isShown = this.#pane.getAttribute("aria-pressed") !== "true"): void {
    this.#pane.setAttribute("aria-pressed", String(isShown));
    this.deeds.showPane(isShown);
  }

  focus(): void {
    this.#samples.focus();
  }

  #choose(): void {
    const [file] = this.#file.files ?? [];
    this.#file.value = "";
    if (file) this.deeds.openFile(file);
  }
}

const button = (label: string, title: string, onclick: () => void): HTMLButtonElement => h("button", { type: "button", title, onclick }, label);
