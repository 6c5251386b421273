import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";

// This file runs before anything is installed: it may import what comes with Node alone.

const root = fileURLToPath(new URL("../../", import.meta.url));
const inRoot = (...path) => join(root, ...path);

/** What a person must do something about: told without a stack. */
export class NotReady extends Error {}

/** Runs a command's own program, and ends with a sentence where it cannot go on. */
export async function run(program) {
  try {
    await program();
  } catch (fault) {
    if (!(fault instanceof NotReady)) throw fault;
    console.error(fault.message);
    process.exitCode = 1;
  }
}

/** Makes sure that Node is new enough and that every package is there. */
export function installed() {
  checkNode(process.versions.node);
  if (isInstalled()) return;
  console.error("Installing what Lotwright needs; this takes about a minute, once …");
  const [command, ...args] = npm();
  const { status } = spawnSync(command, [...args, "ci", "--no-audit", "--no-fund", "--loglevel=error"], {
    cwd: root,
    stdio: ["ignore", 2, 2],
    shell: process.platform === "win32" && command === "npm",
  });
  if (status !== 0) throw new NotReady("Cannot install what Lotwright needs: see the lines above; check the connection to the internet, then run the command again");
}

export function checkNode(version) {
  const { engines } = JSON.parse(readFileSync(inRoot("package.json"), "utf8"));
  const needed = engines.node.replace(/[^\d.]/g, "");
  const [wanted, found] = [needed, version].map((text) => text.split(".").map(Number));
  const isOlder = found[0] < wanted[0] || (found[0] === wanted[0] && found[1] < (wanted[1] ?? 0));
  if (isOlder) throw new NotReady(`Lotwright needs Node ${needed} or newer and this is Node ${version}: install the LTS version from https://nodejs.org, then run the command again`);
}

/** True where every package that package-lock.json asks for is in the list that npm leaves of what it installed. */
function isInstalled() {
  const list = inRoot("node_modules", ".package-lock.json");
  if (!existsSync(list)) return false;
  const [asked, there] = [inRoot("package-lock.json"), list].map((file) => JSON.parse(readFileSync(file, "utf8")).packages);
  // Optional ones are for other kinds of computers.
  return Object.entries(asked).every(([path, { version, optional }]) => path === "" || optional || there[path]?.version === version);
}

/** npm as it was started, or as it is found. */
function npm() {
  const started = process.env["npm_execpath"];
  return started?.endsWith(".js") ? [process.execPath, started] : ["npm"];
}

/** Builds the page of the local workbook, unless the one in dist is as new as its sources. */
export function hostBuilt() {
  const stamp = inRoot("dist", ".host-built");
  const sources = sourcesStamp();
  if (existsSync(inRoot("dist", "host")) && existsSync(stamp) && readFileSync(stamp, "utf8") === sources) return;
  console.error("Building the page; this takes some seconds …");
  const { status } = spawnSync(process.execPath, ["--import", "tsx", inRoot("src", "build", "build-host.ts")], { cwd: root, stdio: ["ignore", 2, 2] });
  if (status !== 0) throw new NotReady("Cannot build the page: see the lines above; if you changed nothing, run npm ci and try again");
  mkdirSync(inRoot("dist"), { recursive: true });
  writeFileSync(stamp, sources);
}

/** Says how many source files there are and when the last one changed. */
function sourcesStamp() {
  const entries = ["src", "shared", "sample-workbooks", "manifest"].filter((folder) => existsSync(inRoot(folder))).flatMap((folder) => filesBelow(inRoot(folder)));
  const files = [...entries, inRoot("package-lock.json"), inRoot("package.json")];
  const latest = Math.max(...files.map((file) => statSync(file).mtimeMs));
  return `${files.length} files, the last of ${new Date(latest).toISOString()}\n`;
}

const filesBelow = (folder) => readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath ?? entry.path, entry.name));
