import { type Model, isCoreCommand } from "@odoo/o-spreadsheet";
import { modelOf } from "../engine/model";
import { type XlsxFile, openXlsx } from "../workbook/file";
import { type GridFile, gridPort } from "../workbook/grid";
import type { BookPort, SheetInfo } from "../workbook/port";
import { type Changes, changesSince } from "./changes";
import { gridData } from "./grid-data";
import { registerRefusals } from "./refusals";
import { type Snapshot, snapshot } from "./snapshot";

/** A workbook file that is open in the grid. */
export class OpenBook {
  readonly model: Model;
  readonly port: BookPort;
  /** False where the file's formats and charts could not be shown. */
  readonly hasLooks: boolean;
  readonly #file: XlsxFile;
  readonly #opened: Snapshot;
  /** As it was when it was opened or last saved. */
  #then: Snapshot;
  /** As it was opened or last saved. */
  #bytes: Uint8Array;
  #isChanged = false;

  /** Throws a FileFault for a file that cannot be opened. */
  constructor(
    readonly name: string,
    bytes: Uint8Array,
  ) {
    registerRefusals();
    this.#bytes = bytes;
    this.#file = openXlsx(bytes);
    const { data, hasLooks } = gridData(this.#file);
    this.hasLooks = hasLooks;
    this.model = modelOf(data);
    this.port = gridPort(this.model, gridFile(this.#file));
    this.#opened = snapshot(this.model, this.#file);
    this.#then = this.#opened;
    this.model.on("command-dispatched", this, (command) => {
      this.#isChanged ||= isCoreCommand(command as never) || ["UNDO", "REDO"].includes(String((command as { type?: string }).type));
    });
  }

  get isChanged(): boolean {
    return this.#isChanged;
  }

  /** Formulas of which the grid gives another value than the file holds. */
  get differing(): readonly string[] {
    return [...this.#then.differing];
  }

  changes(): Changes {
    return changesSince(this.model, this.#then);
  }

  /**
   * The file that was opened with everything changed since patched in, or a FileFault. Always from the opened one: when all
   * is undone, even after a saving, it is that file again, byte for byte.
   */
  patched(): Uint8Array {
    const { cells, additions } = changesSince(this.model, this.#opened);
    return this.#file.patch(cells, additions);
  }

  /** Whether a file is another than the one that was opened or last saved. A note or a sheet changes no cell. */
  isNew(bytes: Uint8Array): boolean {
    return bytes.length !== this.#bytes.length || bytes.some((byte, i) => byte !== this.#bytes[i]);
  }

  /** Goes on from what was saved. */
  saved(bytes: Uint8Array): void {
    this.#bytes = bytes;
    this.#then = snapshot(this.model, openXlsx(bytes), this.#opened);
    this.#isChanged = false;
  }
}

function gridFile(file: XlsxFile): GridFile {
  const has = (sheet: string): boolean => file.sheets.some(({ name, kind }) => name === sheet && kind === "worksheet");
  const known = new Map<string, SheetInfo>();
  return {
    facts(sheet) {
      const facts = known.get(sheet) ?? (has(sheet) ? file.facts(sheet) : null);
      if (facts) known.set(sheet, facts);
      return facts;
    },
    notes: (sheet) => (has(sheet) ? file.notes(sheet) : new Map()),
    // What is added to a sheet that was itself added is held wherever the sheet is.
    tryOut: ({ notes = [], ...rest }) => void file.patch([], { ...rest, notes: notes.filter(({ sheet }) => has(sheet)) }),
  };
}
