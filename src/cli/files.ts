import { type BigIntStats, readFileSync, realpathSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs";
import { basename, dirname, join } from "node:path";
import { FileFault } from "../workbook/file";
import { Misuse } from "./misuse";
import { systemReason } from "./system-reason";

const LARGEST = 100n * 1024n * 1024n;

export function readWorkbookFile(path: string): Uint8Array {
  const found = about(path);
  if (!found) throw new FileFault("there is no such file");
  if (!found.isFile()) throw new FileFault("this is not a file");
  if (found.size > LARGEST) throw new FileFault("it is larger than 100 MB: split it into smaller workbooks");
  try {
    return readFileSync(path);
  } catch (fault) {
    throw new FileFault(systemReason(fault));
  }
}

/** Refuses an output that would replace something that was not meant to be replaced, and one that is no file at all. */
export function checkOutput(input: string, output: string, force: boolean): void {
  const [from, to] = [about(input), about(output)];
  if (!to) return;
  // Two names may lead to one file.
  if (from && from.dev === to.dev && from.ino === to.ino) throw new Misuse("The copy needs a name of its own: the file itself is never changed");
  if (to.isDirectory()) throw new Misuse(`"${output}" is a folder: name the file in it`);
  if (!to.isFile()) throw new Misuse(`"${output}" is a device and no file: choose another name`);
  if (!force) throw new Misuse(`"${output}" is there already: choose another name, or add --force to replace it`);
}

/** Writes whole or not at all: beside its place first, then moved there. */
export function writeWhole(path: string, bytes: Uint8Array): void {
  const place = about(path) ? realpathSync(path) : path;
  const beside = join(dirname(place), `.${basename(place)}.${process.pid}.part`);
  try {
    // Some disks tell only then that there is no room.
    writeFileSync(beside, bytes, { flush: true });
    renameSync(beside, place);
  } catch (fault) {
    rmSync(beside, { force: true });
    throw new Error(`Cannot write "${path}": ${systemReason(fault)}`);
  }
}

function about(path: string): BigIntStats | undefined {
  try {
    return statSync(path, { bigint: true, throwIfNoEntry: false });
  } catch (fault) {
    throw new Error(`Cannot reach "${path}": ${systemReason(fault)}`);
  }
}
