import { existsSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { FileFault } from "../workbook/file";
import { Misuse } from "./misuse";

const LARGEST = 100 * 1024 * 1024;

export function readWorkbookFile(path: string): Uint8Array {
  const found = statSync(path, { throwIfNoEntry: false });
  if (!found) throw new FileFault("there is no such file");
  if (!found.isFile()) throw new FileFault("this is not a file");
  if (found.size > LARGEST) throw new FileFault("it is larger than 100 MB: split it into smaller workbooks");
  return readFileSync(path);
}

/** Refuses an output that would replace something that was not meant to be replaced. */
export function checkOutput(input: string, output: string, force: boolean): void {
  if (resolve(input) === resolve(output)) throw new Misuse("The copy needs a name of its own: the file itself is never changed");
  if (existsSync(output) && !force) throw new Misuse(`"${output}" is there already: choose another name, or add --force to replace it`);
}

/** Writes whole or not at all: beside its place first, then moved there. */
export function writeWhole(path: string, bytes: Uint8Array): void {
  const beside = join(dirname(path), `.${basename(path)}.${process.pid}.part`);
  try {
    writeFileSync(beside, bytes);
    renameSync(beside, path);
  } catch (fault) {
    rmSync(beside, { force: true });
    throw new Misuse(`Cannot write "${path}": ${fault instanceof Error ? fault.message : String(fault)}`);
  }
}
