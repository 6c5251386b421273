import { spawnSync } from "node:child_process";
import { linkSync, lstatSync, mkdirSync, mkdtempSync, readFileSync, readdirSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { checkOutput, writeWhole } from "../../src/cli/files";
import { bookOf, goodRows } from "../lots/reconcile-books";
import { placed, twoMonths } from "../month/books";
import { smallDisk } from "./small-disk";

const PROGRAM = fileURLToPath(new URL("../../src/build/lotwright.mjs", import.meta.url));
const sample = (name: string): string => fileURLToPath(new URL(`../../sample-workbooks/${name}.xlsx`, import.meta.url));
const sources = mkdtempSync(join(tmpdir(), "lotwright-disk-in-"));
const out = mkdtempSync(join(tmpdir(), "lotwright-disk-out-"));
const disks: { remove(): void }[] = [];

beforeAll(async () => {
  writeFileSync(join(sources, "month.xlsx"), (await placed(await twoMonths())).file.bytes);
  writeFileSync(join(sources, "stock.csv"), "kind,what,weight,unit,fineness\ncounted,Crystal,21000,g,999.9\nlot,26-012,,,\nshipped,Bars,900,ozt,999\n");
  writeFileSync(join(sources, "journal.xlsx"), (await placed(await bookOf(goodRows(38)))).file.bytes);
});
afterEach(() => {
  for (const name of readdirSync(out)) rmSync(join(out, name), { recursive: true });
});
afterAll(() => {
  disks.forEach((disk) => disk.remove());
  for (const folder of [sources, out]) rmSync(folder, { recursive: true });
});

const MONTH = ["--month", "2026-03", "--stock", join(sources, "stock.csv"), "--opening", "100", "--opening-uncertainty", "0.3", "--scale", "0.5g", "--assay", "1", "--bias", "0.05%"];
/** What each command reads, the name of what it writes, and what else it is told. */
const commands = {
  share: [sample("cost-sheet"), "out.xlsx", []],
  unshare: [sample("bookkeeper-copy"), "out.xlsx", []],
  month: [join(sources, "month.xlsx"), "out.xlsx", MONTH],
  journal: [join(sources, "journal.xlsx"), "out.csv", []],
} as const satisfies Record<string, readonly [string, string, readonly string[]]>;
type Name = keyof typeof commands;
const names = Object.keys(commands) as Name[];

interface Ended {
  readonly code: number | null;
  readonly said: string;
}
const ended = ({ status, stdout, stderr }: { status: number | null; stdout: string; stderr: string }): Ended => ({ code: status, said: `${stdout}${stderr}`.trimEnd() });
const words = (name: Name, to: string, more: readonly string[]): string[] => [PROGRAM, name, commands[name][0], to, ...commands[name][2], ...more];

/** As a user runs it, where no file may grow over so many blocks. */
const inBlocks = (blocks: number, name: Name, to: string, ...more: readonly string[]): Ended =>
  ended(spawnSync("sh", ["-c", 'ulimit -f "$0"; exec "$@"', String(blocks), process.execPath, ...words(name, to, more)], { encoding: "utf8" }));
const run = (name: Name, to: string, ...more: readonly string[]): Ended => ended(spawnSync(process.execPath, words(name, to, more), { encoding: "utf8" }));

/** What it remarks of the lots comes first. */
const fault = ({ code, said }: Ended): Ended => ({ code, said: said.split("\n").at(-1) ?? "" });
const refused = (to: string, why: string): Ended => ({ code: 2, said: `Cannot write "${to}": ${why}` });
const TOO_LARGE = "it is larger than a file may be here: choose another disk";

describe.skipIf(process.platform === "win32")("a command whose file cannot be written to its end", () => {
  it.each(names)("%s leaves nothing behind and says so, keeps what stood there though it was told to replace it, and never changes what it reads", (name) => {
    const to = join(out, commands[name][1]);
    const before = readFileSync(commands[name][0]);
    expect(fault(inBlocks(name === "journal" ? 1 : 8, name, to))).toEqual(refused(to, TOO_LARGE));
    expect(readdirSync(out)).toEqual([]);
    writeFileSync(to, "mine");
    expect(fault(inBlocks(0, name, to, "--force"))).toEqual(refused(to, TOO_LARGE));
    expect([readdirSync(out), readFileSync(to, "utf8")]).toEqual([[commands[name][1]], "mine"]);
    expect(readFileSync(commands[name][0]).equals(before)).toBe(true);
  });

  it.each(names)("%s writes into no folder that is not there, and says so when its workbook vanished", (name) => {
    const to = join(out, "gone", commands[name][1]);
    expect(fault(run(name, to))).toEqual(refused(to, "there is no such file or folder"));
    const gone = join(sources, "gone.xlsx");
    expect(ended(spawnSync(process.execPath, [PROGRAM, name, gone, join(out, "out.xlsx"), ...commands[name][2]], { encoding: "utf8" }))).toEqual({ code: 2, said: `${gone}: there is no such file` });
    expect(readdirSync(out)).toEqual([]);
  });
});

describe("what is no place for a copy", () => {
  it.each([false, true])("is a folder, a device, and the workbook itself by whatever name (told to replace: %s)", (force) => {
    const [book, link, hard, folder] = ["book.xlsx", "link.xlsx", "hard.xlsx", "folder"].map((name) => join(out, name)) as [string, string, string, string];
    writeFileSync(book, "a workbook");
    symlinkSync(book, link);
    linkSync(book, hard);
    mkdirSync(folder);
    symlinkSync(out, join(folder, "around"));
    for (const same of [book, link, hard, join(folder, "around", "book.xlsx")]) expect(() => checkOutput(book, same, force)).toThrow("The copy needs a name of its own: the file itself is never changed");
    expect(() => checkOutput(book, folder, force)).toThrow(`"${folder}" is a folder: name the file in it`);
    if (process.platform !== "win32") expect(() => checkOutput(book, "/dev/null", force)).toThrow('"/dev/null" is a device and no file: choose another name');
  });

  it("is no link either: the file that it leads to is replaced, and the link stays", () => {
    const [book, link] = [join(out, "copy.xlsx"), join(out, "link.xlsx")];
    writeFileSync(book, "old");
    symlinkSync(book, link);
    writeWhole(link, new TextEncoder().encode("new"));
    expect([readFileSync(book, "utf8"), lstatSync(link).isSymbolicLink()]).toEqual(["new", true]);
  });
});

describe("what a command prints when nobody can take it", () => {
  it.skipIf(process.platform !== "linux")("on a full disk ends in a sentence, with the copy whole", () => {
    const to = join(out, "out.xlsx");
    const { status, stderr } = spawnSync("sh", ["-c", '"$@" > /dev/full', "sh", process.execPath, ...words("share", to, [])], { encoding: "utf8" });
    expect([status, stderr.trim()]).toEqual([2, "Cannot print how it ended: the disk is full: make room, or choose another disk"]);
    expect(run("share", join(out, "again.xlsx")).code).toBe(0);
    expect(readFileSync(to).equals(readFileSync(join(out, "again.xlsx")))).toBe(true);
  });

  it.skipIf(process.platform === "win32")("into a program that has read enough is no fault", () => {
    const { stderr } = spawnSync("sh", ["-c", '"$@" | head -n 1', "sh", process.execPath, PROGRAM, "functions"], { encoding: "utf8" });
    expect(stderr).toBe("");
  });
});

/** A test that needs a disk of its own says in its name when there is none. */
function onDisk(title: string, body: (disk: NonNullable<ReturnType<typeof smallDisk>>) => void): void {
  const disk = smallDisk(128);
  if (disk) disks.push(disk);
  it.skipIf(!disk)(disk ? title : `${title} (needs the right to mount a small disk)`, () => void (disk && body(disk)));
}

describe("a disk with little room", () => {
  onDisk("keeps the old file whole at whatever length it is full, and no part of the new one", ({ folder }) => {
    const [to, filler] = [join(folder, "lots.xlsx"), join(folder, "photographs")];
    const copy = new Uint8Array(60 * 1024).fill(7);
    let faults = 0;
    for (let taken = 124; taken >= 0; taken -= 4) {
      rmSync(to, { force: true });
      writeFileSync(to, "mine");
      writeFileSync(filler, new Uint8Array(taken * 1024));
      let fault = "";
      try {
        writeWhole(to, copy);
      } catch (thrown) {
        fault = (thrown as Error).message;
      }
      expect(readdirSync(folder).sort(), `${taken} KB taken`).toEqual(["lots.xlsx", "photographs"]);
      if (fault === "") expect(readFileSync(to).equals(copy)).toBe(true);
      else {
        faults++;
        expect([fault, readFileSync(to, "utf8")]).toEqual([`Cannot write "${to}": the disk is full: make room, or choose another disk`, "mine"]);
      }
    }
    console.log(`disk: full at ${faults} lengths of 32, each time the old file whole`);
    expect(faults).toBeGreaterThan(10);
    expect(faults).toBeLessThan(32);
  });

  onDisk("that is full takes no copy, and one that can only be read says so", (disk) => {
    const to = join(disk.folder, "out.xlsx");
    writeFileSync(join(disk.folder, "photographs"), new Uint8Array(112 * 1024));
    expect(run("share", to)).toEqual(refused(to, "the disk is full: make room, or choose another disk"));
    expect(readdirSync(disk.folder)).toEqual(["photographs"]);
    disk.readOnly();
    for (const name of names) expect(fault(run(name, to))).toEqual(refused(to, "its disk can only be read: choose another folder"));
    expect(readdirSync(disk.folder)).toEqual(["photographs"]);
  });
});
