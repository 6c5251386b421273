import { type Model, isCoreCommand } from "@odoo/o-spreadsheet";
import { modelOf } from "../engine/model";
import { type XlsxFile, openXlsx } from "../workbook/file";
import { gridPort } from "../workbook/grid";
import type { WorkbookPort } from "../workbook/port";
import { type Changes, changesSince } from "./changes";
import { gridData } from "./grid-data";
import { registerRefusals } from "./refusals";
import { type Snapshot, snapshot } from "./snapshot";

/** A workbook file that is open in the grid. */
export class OpenBook {
  readonly model: Model;
  readonly port: WorkbookPort;
  /** False where the file's formats and charts could not be shown. */
  readonly hasLooks: boolean;
  #file: XlsxFile;
  #then: Snapshot;
  #isChanged = false;

  /** Throws a FileFault for a file that cannot be opened. */
  constructor(
    readonly name: string,
    bytes: Uint8Array,
  ) {
    registerRefusals();
    this.#file = openXlsx(bytes);
    const { data, hasLooks } = gridData(this.#file);
    this.hasLooks = hasLooks;
    this.model = modelOf(data);
    this.port = gridPort(this.model);
    this.#then = snapshot(this.model, this.#file);
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

  /** The file with the changed cells patched in, or a FileFault. */
  patched({ cells }: Changes): Uint8Array {
    return this.#file.patch(cells);
  }

  /** Goes on from what was saved. */
  saved(bytes: Uint8Array): void {
    this.#file = openXlsx(bytes);
    this.#then = snapshot(this.model, this.#file);
    this.#isChanged = false;
  }
}
