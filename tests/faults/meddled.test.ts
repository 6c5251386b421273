import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Pages, openPages, ports } from "./pages";
import { type WritingTask, writingTasks } from "./tasks";

let pages: Pages;
beforeAll(async () => {
  pages = await openPages();
}, 240_000);
afterAll(() => pages?.close());

describe.each(ports)("a cell that another hand changes while a review is open beside the port over the %s", (port) => {
  it.each([
    ["a lot is set up", "Lots", "B12"],
    ["a lot is settled", "Lots", "B11"],
    ["a month is closed", "Lots", "H3"],
  ])("keeps the pane from writing, which says so, while %s (%s!%s)", async (name, sheet, cell) => {
    const task = writingTasks[name] as WritingTask;
    const page = await pages.filled(port, task);
    const { says, isWritten } = await page.evaluate(([buttons, on, at]) => window.trial.meddled(buttons, on, at), [task.buttons, sheet, cell] as const);
    await pages.leave(page);
    expect(says).toContain(`${sheet}!${cell} changed since the review: look at it again before writing`);
    expect(isWritten).toBe(false);
  }, 60_000);
});
