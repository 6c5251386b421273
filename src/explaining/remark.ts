import type { Explanation } from "./explain";

/** What must be said where the cell and its working do not go together; null where they do. */
export function remarkOn({ shows, calls, whole }: Explanation): string | null {
  const areWorked = calls.every(({ outcome }) => outcome.kind === "worked");
  if (shows.value === "#BUSY!") return "Excel is still computing this cell: select it again in a moment";
  if (shows.error && whole.kind === "known")
    return `The cell shows ${String(shows.value)}, though its numbers compute: press F2 and then Enter in it to have it computed again`;
  if (shows.error && areWorked) return `The cell shows ${String(shows.value)}, and our part of its formula computes: look at what stands around it`;
  if (whole.kind !== "known" || shows.error) return null;
  const computed = Array.isArray(whole.holds) ? (whole.holds as unknown[][])[0]?.[0] : whole.holds;
  return isSame(computed, shows.value) ? null : `The cell shows ${String(shows.value)}, but its numbers now give ${String(computed)}: have the workbook computed again (F9)`;
}

/** Another program's last digits are not a difference. */
function isSame(a: unknown, b: unknown): boolean {
  if (typeof a === "number" && typeof b === "number") return Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b), 1e-6);
  return a === b || ((a === null || a === "") && (b === null || b === ""));
}
