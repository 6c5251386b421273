import { fill } from "./dom";
import { followColours } from "./colours";
import { frontPage } from "./front-page";
import type { Page, Stage, Task } from "./page";
import type { PaneHost } from "./pane-host";
import { frontTasks } from "./tasks";

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
  let isShown = true;
  const home = (fault: string | null = null): void => {
    const from = left;
    left = null;
    stage.show(frontPage(frontTasks, (task) => void open(task), from, fault));
  };
  const open = async (task: Task): Promise<void> => {
    left = task;
    try {
      const openTask = await task.load();
      if (isShown && left === task) openTask(stage, () => home());
    } catch (thrown) {
      console.error(thrown);
      if (isShown && left === task) home(`“${task.title}” could not be loaded: see that this machine is online, then open it again`);
    }
  };
  const onKey = (event: KeyboardEvent): void => {
    if (event.key !== "Escape" || event.defaultPrevented) return;
    event.preventDefault();
    current?.back();
  };

  root.classList.add("lotwright-pane");
  root.addEventListener("keydown", onKey);
  const unfollow = followColours(root, host);
  if (left) void open(left);
  else home();
  return () => {
    isShown = false;
    current?.close();
    unfollow();
    root.removeEventListener("keydown", onKey);
    root.classList.remove("lotwright-pane");
    fill(root);
  };
}
