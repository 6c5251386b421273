import { createHash } from "node:crypto";
import { createReadStream, readFileSync } from "node:fs";
import { realpath, stat } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, sep } from "node:path";
import { isThisMachine } from "./this-machine.mjs";

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".xml": "application/xml; charset=utf-8",
  ".txt": "text/plain; charset=utf-8",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".woff2": "font/woff2",
  ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};

/**
 * Serves the files of one folder to this computer alone. Gives the server once it listens; rejects with the system's
 * own error when the port cannot be had.
 */
export async function serve(folder, port) {
  const root = await realpath(folder);
  const policy = contentPolicy(readFileSync(join(root, "index.html"), "utf8"));
  const server = createServer((request, response) => {
    answer(request, response, root, policy).catch(() => finish(response, 500, "Cannot read this file: build the page again"));
  });
  await new Promise((listening, refused) => {
    server.once("error", refused);
    server.listen(port, "127.0.0.1", listening);
  });
  return server;
}

async function answer(request, response, root, policy) {
  // A page elsewhere that points its own name at this computer must not read what is served here.
  if (!isThisMachine(request.headers.host)) return finish(response, 403, "Lotwright answers on this computer alone: open it at 127.0.0.1");
  if (request.method !== "GET" && request.method !== "HEAD") return finish(response, 405, "Lotwright only gives files", { Allow: "GET, HEAD" });
  const file = await fileFor(request.url ?? "/", root);
  if (!file) return finish(response, 404, "There is no such file here");

  const tag = `"${file.size.toString(36)}-${Math.round(file.mtimeMs).toString(36)}"`;
  const headers = {
    "Content-Type": TYPES[extname(file.path)] ?? "application/octet-stream",
    // The browser keeps its copy and asks each time whether it is still the newest.
    "Cache-Control": "no-cache",
    ETag: tag,
    "Content-Security-Policy": policy,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
  };
  if (request.headers["if-none-match"] === tag) return response.writeHead(304, headers).end();
  response.writeHead(200, { ...headers, "Content-Length": file.size });
  if (request.method === "HEAD") return response.end();
  createReadStream(file.path).on("error", () => response.destroy()).pipe(response);
}

/** The file that an address names: one within the folder, also after every link is followed, and none that is hidden. */
async function fileFor(url, root) {
  const path = decoded(url.replace(/[?#].*$/, ""));
  if (path === null || path.includes("\0") || path.includes("\\")) return null;
  const steps = path.split("/").filter((step) => step !== "");
  if (steps.some((step) => step.startsWith("."))) return null;
  try {
    const found = await realpath(join(root, ...(steps.length === 0 ? ["index.html"] : steps)));
    const about = await stat(found);
    return found.startsWith(root + sep) && about.isFile() ? { path: found, size: about.size, mtimeMs: about.mtimeMs } : null;
  } catch {
    return null;
  }
}

function decoded(path) {
  try {
    return decodeURIComponent(path);
  } catch {
    return null;
  }
}

function finish(response, status, sentence, headers = {}) {
  if (response.headersSent) return response.destroy();
  response.writeHead(status, { "Content-Type": TYPES[".txt"], "X-Content-Type-Options": "nosniff", ...headers }).end(`${sentence}\n`);
}

/** The page may load and send nothing beyond this server, so that a workbook opened in it stays on this computer. The grid's templates need eval. */
function contentPolicy(html) {
  const inline = [...html.matchAll(/<script type="importmap">([^]*?)<\/script>/g)].map(([, text]) => `'sha256-${createHash("sha256").update(text).digest("base64")}'`);
  return [
    "default-src 'self'",
    `script-src 'self' 'unsafe-eval' ${inline.join(" ")}`.trim(),
    "style-src 'self' 'unsafe-inline'",
    "img-src 'self' data: blob:",
    "font-src 'self' data:",
    "object-src 'none'",
    "base-uri 'none'",
    "frame-ancestors 'none'",
  ].join("; ");
}
