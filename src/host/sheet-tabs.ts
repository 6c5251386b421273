/** A double click would begin to rename a sheet, a right click offer to copy or delete it: no saved file holds either. */
export function keepTabsAsTheyAre(grid: HTMLElement): void {
  for (const deed of ["dblclick", "contextmenu"] as const)
    grid.addEventListener(
      deed,
      (event) => {
        if (!(event.target as Element).closest(".o-sheet")) return;
        event.preventDefault();
        event.stopPropagation();
      },
      { capture: true },
    );
}
