/** Draws the icons from lotwright.svg: run by hand when the drawing changes, the pictures are committed. */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { launch } from "../../tests/browser/chromium";

const here = fileURLToPath(new URL(".", import.meta.url));
const drawing = readFileSync(`${here}lotwright.svg`, "utf8");

const browser = await launch();
for (const size of [16, 32, 64, 80]) {
  const page = await browser.newPage({ viewport: { width: size, height: size } });
  await page.setContent(`<style>body { margin: 0 } svg { display: block; width: ${size}px }</style>${drawing}`);
  await page.screenshot({ path: `${here}icon-${size}.png`, omitBackground: true });
  await page.close();
}
await browser.close();
