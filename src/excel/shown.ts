/**
 * Calls `shown` whenever the pane comes into view, and at once where it is. The page is loaded for the functions'
 * sake, often long before the pane is opened, if it ever is.
 */
export function onShown(shown: () => void): void {
  const look = (): void => {
    // In Excel on the web a hidden page counts as visible but has no size.
    if (document.visibilityState === "visible" && window.innerWidth > 0 && window.innerHeight > 0) shown();
  };
  document.addEventListener("visibilitychange", look);
  window.addEventListener("resize", look);
  look();
  const told = Office.addin.onVisibilityModeChanged(async ({ visibilityMode }) => {
    if (visibilityMode === Office.VisibilityMode.taskpane) shown();
  });
  // A host that does not tell still shows the page itself: the listeners above see that.
  told.catch(() => {});
}
