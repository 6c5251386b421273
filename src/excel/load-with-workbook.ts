let asked = false;

/**
 * A workbook that uses the functions has them loaded as it opens from then on; else it shows #NAME? until something
 * else wakes the add-in.
 */
export function loadWithWorkbook(): void {
  if (asked) return;
  asked = true;
  Office.onReady()
    .then(() => Office.addin.setStartupBehavior(Office.StartupBehavior.load))
    // A workbook that may only be read cannot keep this, and works all the same.
    .catch(() => {});
}
