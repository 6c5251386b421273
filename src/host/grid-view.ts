import { type Model, Spreadsheet, stores } from "@odoo/o-spreadsheet";
import { App } from "@odoo/owl";

/** The grid on the page, for one workbook. */
export interface GridView {
  /** Ends the typing in a cell as Enter does: what is half typed is not in the workbook yet. */
  finishTyping(): void;
  focus(): void;
  remove(): void;
}

export interface GridMessages {
  tell(sentence: string): void;
  ask(question: string, yes: () => void, no?: () => void): void;
}

/** The grid's own component, with its editor within reach. */
class Grid extends Spreadsheet {
  declare editor: { readonly editionMode: string; stopEdition(): void };

  override setup(): void {
    super.setup();
    this.editor = stores.useStore(stores.CellComposerStore);
  }
}

export async function showGrid(root: HTMLElement, model: Model, messages: GridMessages): Promise<GridView> {
  const app = new App(Grid, {
    props: {
      model,
      notifyUser: ({ text }: { text: string }) => messages.tell(String(text)),
      raiseError: (text: string, then?: () => void) => {
        messages.tell(String(text));
        then?.();
      },
      askConfirmation: (text: string, yes: () => void, no?: () => void) => messages.ask(String(text), yes, no),
    },
    templates: await templates(),
    warnIfNoStaticProps: false,
  });
  const grid = await app.mount(root);
  const gone = new AbortController();
  root.addEventListener("input", (event) => startAfresh(grid, event), { capture: true, signal: gone.signal });
  return {
    finishTyping() {
      if (grid.editor.editionMode !== "inactive") grid.editor.stopEdition();
    },
    focus: () => grid.focusGrid(),
    remove() {
      gone.abort();
      app.destroy();
    },
  };
}

/**
 * While nobody types, the grid's editor holds the cell's old content, and lets go of it when the page is drawn after the
 * first key. A second key before that, as under load, would be added to the old content.
 */
function startAfresh({ editor }: Grid, event: Event): void {
  const { target } = event;
  if (editor.editionMode !== "inactive" || !(event instanceof InputEvent) || event.isComposing || !(target instanceof HTMLElement) || !target.matches(".o-composer")) return;
  target.textContent = event.data;
  getSelection()?.selectAllChildren(target);
  getSelection()?.collapseToEnd();
}

let loaded: Promise<string> | undefined;
/** The grid's templates are a file beside it. */
const templates = (): Promise<string> => (loaded ??= fetch("o-spreadsheet/o_spreadsheet.xml").then((response) => response.text()));
