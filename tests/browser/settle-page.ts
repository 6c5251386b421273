/** Runs in the browser: the settling of a lot beside a workbook that the test holds. */
import type { Page } from "../../src/pane/page";
import { settleALot } from "../../src/pane/settle-a-lot/task";
import { servedPort } from "./served-port";

const isComma = new URLSearchParams(location.search).get("decimal") === ",";
const root = document.querySelector<HTMLElement>("#pane");
if (!root) throw new Error("The page has no place for the pane");
root.classList.add("lotwright-pane");
const nobody = (): Promise<never> => Promise.reject(new Error("Nobody asks for this file"));
const host = { port: servedPort, separator: isComma ? ";" : ",", decimal: isComma ? "," : ".", files: { current: nobody, handOver: nobody } } as const;
const openTask = await settleALot.load();

let current: Page | null = null;
const settling = {
  open() {
    settling.close();
    openTask(
      {
        host,
        show(page) {
          current = page;
          root.replaceChildren(page.element);
        },
      },
      () => (document.title = "All tasks"),
    );
  },
  close() {
    current?.close();
    current = null;
  },
};
declare global {
  interface Window {
    settling: typeof settling;
  }
}
window.settling = settling;
settling.open();
