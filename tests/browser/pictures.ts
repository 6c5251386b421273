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
} finally {
  await browser.close();
  await host.stop();
}
