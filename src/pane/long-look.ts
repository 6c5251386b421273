import { h } from "./dom";

/** One look, until the next is begun. */
export interface Turn {
  /** Whether another look was begun, or the page closed. */
  isGone(): boolean;
  /** Lets the page be drawn now and then; false stops. */
  step(done: number, of: number): Promise<boolean>;
}

interface LongLook {
  readonly working: HTMLElement;
  readonly again: HTMLButtonElement;
  begin(): Turn;
  /** Shows the bar or the button; whoever had the focus on what goes away, or on `others`, is not left without. */
  show(isWorking: boolean, others?: readonly HTMLElement[]): void;
  close(): void;
}

/** In milliseconds. */
const SLICE = 50;

/** A look through the workbook that may take long: how far it is, a way to stop it, and one to look again. */
export function longLook(label: string, look: () => void, says: (of: number) => void = () => undefined): LongLook {
  const bar = h("progress", { "aria-label": label });
  const stop = h("button", { type: "button", onclick: () => halt() }, "Stop");
  const again = h("button", { type: "button", onclick: look }, "Look again");
  const working = h("div", { class: "lw-progress" }, bar, stop);
  let run = 0;
  let isStopped = false;
  let isClosed = false;
  let drawn = 0;
  function halt(): void {
    isStopped = true;
    again.focus();
  }
  return {
    working,
    again,
    begin() {
      const mine = ++run;
      isStopped = false;
      const isGone = (): boolean => mine !== run || isClosed;
      return {
        isGone,
        async step(done, of) {
          if (performance.now() - drawn > SLICE) {
            bar.max = of;
            bar.value = done;
            says(of);
            await new Promise((resolve) => setTimeout(resolve));
            drawn = performance.now();
          }
          return !isStopped && !isGone();
        },
      };
    },
    show(isWorking, others = []) {
      const hadFocus = [working, again, ...others].some((one) => one.contains(document.activeElement));
      if (isWorking) bar.removeAttribute("value");
      working.hidden = !isWorking;
      for (const one of [again, ...others]) one.hidden = isWorking;
      if (hadFocus) (isWorking ? stop : again).focus();
    },
    close() {
      isClosed = true;
    },
  };
}
