import { fill } from "./dom";
import { followColours } from "./colours";
import { frontPage } from "./front-page";
import type { Page, Stage, Task } from "./page";
import type { PaneHost } from "./pane-host";
import { tasks } from "./tasks";

export type Unmount = () => void;

/** Kept while the program runs, so that a pane that is closed opens again where it was. */
let left: Task | null = null;

/** Shows the pane inside an element; the page must link pane.css. */
export function mountPane(root: HTMLElement, host: PaneHost): Unmount {
  let current: Page | null = null;
  const stage: Stage = {
    host,
    show(page) {
      const isFirst = current === null;
      current?.close();
      current = page;
      fill(root, page.element);
      root.scrollTop = 0;
      // A pane that has just appeared leaves the focus in the sheet.
      if (!isFirst) page.focus();
    },
  };
  const home = (): void => {
    left = null;
    stage.show(frontPage(tasks, open));
  };
  const open = (task: Task): void => {
    left = task;
    task.open(stage, home);
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== "Escape" || event.defaultPrevented) return;
    event.preventDefault();
    current?.back();
  };

  root.classList.add("lotwright-pane");
  root.addEventListener("keydown", onKey);
  const unfollow = followColours(root, host);
  if (left) open(left);
  else home();
  return () => {
    current?.close();
    unfollow();
    root.removeEventListener("keydown", onKey);
    root.classList.remove("lotwright-pane");
    fill(root);
  };
}
