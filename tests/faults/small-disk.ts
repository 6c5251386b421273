import { spawnSync } from "node:child_process";
import { mkdtempSync, rmdirSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";

/** A disk of its own with room for so many kilobytes; null where this user may not make one. */
export function smallDisk(kilobytes: number): { readonly folder: string; readOnly(): void; remove(): void } | null {
  const folder = mkdtempSync(join(tmpdir(), "lotwright-disk-"));
  const done = (command: string, ...words: readonly string[]): boolean => spawnSync(command, words).status === 0;
  if (process.platform !== "linux" || !done("mount", "-t", "tmpfs", "-o", `size=${kilobytes}k`, "tmpfs", folder)) {
    rmdirSync(folder);
    return null;
  }
  return {
    folder,
    readOnly: () => void done("mount", "-o", "remount,ro", folder),
    remove() {
      done("umount", folder);
      rmdirSync(folder);
    },
  };
}
