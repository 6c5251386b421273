/** One page of the task. */
export interface Step {
  readonly title: string;
  readonly element: HTMLElement;
  /** Shows itself by what the steps before it have given. */
  enter(): void | Promise<void>;
  /** Whether one may go on; where not, it says why and puts the focus there. */
  mayLeave(): boolean | Promise<boolean>;
  /** Puts the focus where the work begins; false where its heading will do. */
  focus(): boolean;
  close(): void;
}
