import { launch } from "/work/main/tests/browser/chromium";
const b = await launch();
const page = await b.newPage({ viewport: { width: 1400, height: 860 } });
page.on("console", m => { if (m.type() !== "debug") console.log(m.type(), m.text()); });
page.on("pageerror", e => console.log("PAGEERROR", e.stack));
await page.goto("http://127.0.0.1:8499/");
await page.waitForTimeout(4000);
await page.screenshot({ path: "/tmp/shots/1.png" });
await b.close();
