import type { PaneHost } from "./pane-host";

/** What the pane shows at one time. */
export interface Page {
  readonly element: HTMLElement;
  /** Called when the page has come into view: puts the focus where the work goes on. */
  focus(): void;
  /** One step back, as the Escape key asks for. */
  back(): void;
  close(): void;
}

/** Where pages appear. */
export interface Stage {
  readonly host: PaneHost;
  show(page: Page): void;
}

/** Something that a refiner does with the pane. */
export interface Task {
  readonly title: string;
  readonly about: string;
  /** Gets its code, which is loaded when the task is opened. */
  load(): Promise<OpenTask>;
}

/** Shows a task where it was left; `leave` goes back to the list of tasks. */
export type OpenTask = (stage: Stage, leave: () => void) => void;
