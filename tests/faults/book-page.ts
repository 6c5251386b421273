/** Runs in the browser: the tasks beside a workbook file, or beside the grid that has it open. */
import { type Command, type CommandResult, CorePlugin, isCoreCommand, registries } from "@odoo/o-spreadsheet";
import { isOurs } from "../../src/engine/steps";
import { OpenBook } from "../../src/host/open-book";
import { openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";
import { type Bench, type Faults, trial } from "./trial";

const ask = new URLSearchParams(location.search);

let left: number | null = null;
let hasRefused = false;
/** Refuses the n-th command that is done as a step of ours. */
class Refusing extends CorePlugin {
  override allowDispatch(command: Command): CommandResult {
    if (left === null || !isCoreCommand(command) || !isOurs(command) || left-- > 0) return "Success" as CommandResult;
    left = null;
    hasRefused = true;
    return "ForTheTest" as CommandResult;
  }
}
const commands: Faults = {
  what: "commands of the grid",
  says: /ForTheTest/,
  every: 7,
  failAt(n) {
    left = n;
    if (n !== null) hasRefused = false;
  },
  hasFailed: () => hasRefused,
};

/** Of all bytes, so that none can differ unseen. */
function hashed(bytes: Uint8Array): string {
  let hash = 0xcbf29ce484222325n;
  const words = new BigUint64Array(bytes.slice(0, bytes.length & ~7).buffer);
  for (const word of words) hash = BigInt.asUintN(64, (hash ^ word) * 0x100000001b3n);
  return `${hash} ${bytes.length} ${bytes.slice(bytes.length & ~7)}`;
}

/** The grid gives new things names by chance. */
const withoutChance = (text: string): string => text.replace(/[0-9a-f]{8}-[0-9a-f]{4}-[0-9a-f-]{22}/g, "id");

function file(bytes: Uint8Array): Bench {
  const port = new FilePort(openXlsx(bytes));
  return { port, state: () => hashed(port.file.bytes), faults: [] };
}
function grid(bytes: Uint8Array): Bench {
  registries.corePluginRegistry.add("refusingForTheTest", Refusing);
  const book = new OpenBook("book.xlsx", bytes);
  const state = (): string => {
    const { sheets } = book.model._exportData(false);
    return withoutChance(JSON.stringify(sheets.map(({ name, cells, formats, merges, figures, tables, isVisible }) => ({ name, cells, formats, merges, figures, tables, isVisible })))) + hashed(book.patched());
  };
  return { port: book.port, state, faults: [commands] };
}

const bytes = new Uint8Array(await (await fetch(`/book.xlsx?book=${ask.get("book") ?? ""}`)).arrayBuffer());
const root = document.querySelector<HTMLElement>("#pane");
if (!root) throw new Error("The page has no place for the pane");
window.trial = trial(root, ask.get("port") === "grid" ? grid(bytes) : file(bytes));
