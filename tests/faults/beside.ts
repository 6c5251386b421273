import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Pages, type PortName, openPages } from "./pages";
import { type WritingTask, writingTasks } from "./tasks";

/** `npm run faults` tries every call and request, and some of the many changes that one write makes; the run of all tests fewer. */
const STRIDE = process.env["MODE"] === "faults" ? 1 : 8;
const A_BUSY_MACHINE = 480_000;

/** Whatever fails beside one port, while each task that writes is looked at, written and undone. */
export function faultsBeside(port: PortName): void {
  let pages: Pages;
  beforeAll(async () => {
    pages = await openPages(STRIDE);
  }, A_BUSY_MACHINE);
  afterAll(() => pages?.close());

  describe(`whatever fails beside the port over the ${port}`, () => {
    it.each(Object.keys(writingTasks))("while %s, the workbook is as before or as planned, the pane says which, and it can be tried again", async (name) => {
      const task = writingTasks[name] as WritingTask;
      const page = await pages.filled(port, task);
      const complaints: string[] = [];
      page.on("pageerror", (error) => complaints.push(String(error)));
      const counts = await page.evaluate((says) => window.trial.run(says), task.buttons);
      await pages.leave(page);
      for (const [what, { look, write, undo, before, after }] of Object.entries(counts))
        console.log(`faults: ${port}, ${name}, ${what}: ${look + write + undo} (review ${look}, write ${write}, undo ${undo}); then as before ${before}, as planned ${after}`);
      expect(Object.values(counts).flatMap(({ wrong }) => wrong)).toEqual([]);
      expect(complaints).toEqual([]);
      for (const { write } of Object.values(counts)) expect(write).toBeGreaterThan(0);
      expect(counts["calls of the port"]?.undo).toBeGreaterThan(0);
    }, A_BUSY_MACHINE);
  });
}
