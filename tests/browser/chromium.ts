import { execFile } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { mkdir, mkdtemp, rename, rm, writeFile } from "node:fs/promises";
import { delimiter, dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { promisify } from "node:util";
import { type Browser, type LaunchOptions, chromium } from "playwright-core";

/** A headless browser for a test: one that is installed, or else the one that comes with the npm packages. */
export async function launch(): Promise<Browser> {
  const refusals: string[] = [];
  for (const candidate of [...installed(), fromNpm]) {
    try {
      // Containers run as root, where the browser refuses to start with its sandbox.
      return await chromium.launch({ ...(await candidate()), args: ["--no-sandbox"] });
    } catch (error) {
      refusals.push(String(error).split("\n")[0] ?? "");
    }
  }
  throw new Error(`Cannot start a browser for this test: install Chromium, Chrome or Edge. What was tried: ${refusals.join("; ")}`);
}

type Candidate = () => LaunchOptions | Promise<LaunchOptions>;

function installed(): Candidate[] {
  const folders = (process.env["PATH"] ?? "").split(delimiter);
  const onPath = folders
    .flatMap((folder) => [join(folder, "chromium"), join(folder, "chromium-browser")])
    .filter((path) => existsSync(path));
  return [
    ...onPath.map((executablePath) => () => ({ executablePath })),
    () => ({ channel: "chrome" }),
    () => ({ channel: "msedge" }),
  ];
}

async function fromNpm(): Promise<LaunchOptions> {
  const folder = await unpacked();
  return {
    executablePath: join(folder, "chromium"),
    env: { ...process.env, LD_LIBRARY_PATH: join(folder, "al2023", "lib"), FONTCONFIG_PATH: join(folder, "fonts") },
  };
}

/**
 * The package unpacks into the temporary folder and trusts whatever lies there already, also when another test is
 * still writing it. So it unpacks in a process and a folder of its own, which takes its final name when it is whole.
 */
async function unpacked(): Promise<string> {
  const { version } = JSON.parse(readFileSync(join(packageFolder(), "package.json"), "utf8")) as { version: string };
  const cache = fileURLToPath(new URL("../../node_modules/.cache/", import.meta.url));
  const ready = join(cache, `chromium-${version}`);
  if (existsSync(ready)) return ready;
  await mkdir(cache, { recursive: true });
  const fresh = await mkdtemp(join(cache, "unpacking-"));
  const unpack = 'import("@sparticuz/chromium").then(({ default: browser }) => browser.executablePath())';
  await promisify(execFile)(process.execPath, ["-e", unpack], {
    cwd: dirname(packageFolder()),
    // The second makes it unpack the libraries that a bare machine lacks.
    env: { ...process.env, TMPDIR: fresh, AWS_LAMBDA_JS_RUNTIME: "nodejs20.x" },
  });
  await writeFile(join(fresh, "fonts", "fonts.conf"), FONTS);
  await rename(fresh, ready).catch(async (error: unknown) => {
    await rm(fresh, { recursive: true });
    if (!existsSync(ready)) throw error;
  });
  return ready;
}

/** The package's own settings look for its fonts in the temporary folder alone. */
const FONTS = `<?xml version="1.0"?>
<fontconfig>
  <dir prefix="relative">.</dir>
  <dir>/usr/share/fonts</dir>
  <cachedir prefix="xdg">fontconfig</cachedir>
</fontconfig>
`;

const packageFolder = (): string => fileURLToPath(new URL("../../node_modules/@sparticuz/chromium/", import.meta.url));
