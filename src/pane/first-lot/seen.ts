/**
 * Whether the first lot was computed or skipped on this machine. It is a person who is new and not a workbook, so it is
 * kept in the browser's profile: a flag in the workbook would add a sheet to it and a change to save.
 */
const KEY = "lotwright-first-lot";
let isSeen = false;

export function wasSeen(): boolean {
  try {
    return isSeen || localStorage.getItem(KEY) !== null;
  } catch {
    return isSeen;
  }
}

export function markSeen(): void {
  isSeen = true;
  try {
    localStorage.setItem(KEY, "seen");
  } catch {
    // A web view that keeps nothing asks again another day.
  }
}
