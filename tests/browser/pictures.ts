/** npm run pictures: the README's pictures, taken from the running product. */
import { mkdirSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { start } from "../host/started";
import { launch } from "./chromium";

const folder = fileURLToPath(new URL("../../sample-workbooks/pictures/", import.meta.url));
mkdirSync(folder, { recursive: true });

const host = await start();
const browser = await launch();
try {
  const page = await browser.newPage({ viewport: { width: 1280, height: 760 }, deviceScaleFactor: 1.5 });
  await page.goto(host.address);
  await page.getByText("cost-sheet.xlsx").waitFor();
  await page.getByRole("button", { name: /All functions/ }).click();
  await page.getByRole("searchbox").fill("how much copper");
  await page.keyboard.press("Enter");
  await page.getByText("LOT.COPPER").first().waitFor();
  await page.screenshot({ path: `${folder}cost-sheet.png` });

  /** A sample on one of its sheets, counted from the first, the hidden one too. */
  async function picture(sample: string, sheet: number): Promise<void> {
    await page.getByLabel("Open a sample workbook").selectOption({ label: sample });
    await page.locator(".busy").waitFor({ state: "hidden" });
    for (let i = 0; i < sheet; i++) await page.keyboard.press("Shift+PageDown", { delay: 40 });
    await page.waitForTimeout(1000);
    await page.screenshot({ path: `${folder}${sample.toLowerCase().replaceAll(" ", "-")}.png` });
  }
  await page.keyboard.press("Escape");
  await page.keyboard.press("Escape");
  await picture("Quotes", 3);
  await picture("Throughput", 10);
  await picture("Bookkeeper copy", 15);
} finally {
  await browser.close();
  await host.stop();
}
