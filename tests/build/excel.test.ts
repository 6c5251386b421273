import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { createServer, request } from "node:https";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { generateCertificates } from "office-addin-dev-certs";
import { OfficeAddinManifest } from "office-addin-manifest";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import { listen } from "../../src/build/port";
import { serveFolder } from "../../src/build/serve-folder";
import { type Built, buildAddIn } from "../office/built";
import { openServer, outerAddresses, reach } from "./loopback";

const BASE = "https://example.org/tools/lotwright/";
let built: Built;
beforeAll(async () => {
  built = await buildAddIn(BASE);
});

afterAll(() => rmSync(built.folder, { recursive: true }));

describe("the folder that is built for an address", () => {
  it("holds the page, the script, the metadata, the help, the icons and the manifest", () => {
    for (const name of ["index.html", "start.js", "pane.css", "functions.json", "reference.html", "reference.css", "reference.js", "icon-16.png", "icon-80.png", "manifest.xml"])
      expect(built.file(name)?.length, name).toBeGreaterThan(0);
  });

  it("has a manifest that points there and nowhere else", async () => {
    const manifest = built.file("manifest.xml")?.toString() ?? "";
    const addresses = [...manifest.matchAll(/DefaultValue="(https?:[^"]*)"/g)].map(([, address]) => address ?? "");
    expect(addresses.length).toBeGreaterThan(8);
    expect(addresses.filter((address) => !address.startsWith(BASE))).toEqual([]);
    const read = await OfficeAddinManifest.readManifestFile(join(built.folder, "manifest.xml"));
    expect(read.defaultSettings?.sourceLocation).toBe(`${BASE}index.html`);
  });

  it("mentions this machine nowhere", () => {
    for (const name of ["index.html", "start.js", "functions.json", "reference.html", "reference.js", "manifest.xml"]) expect(built.file(name)?.toString()).not.toMatch(/localhost|127\.0\.0\.1/);
  });

  it("has a page that loads only from its own folder and from Microsoft", () => {
    const page = built.file("index.html")?.toString() ?? "";
    const loaded = [...page.matchAll(/(?:src|href)="([^"]*)"/g)].map(([, address]) => address);
    expect(loaded).toEqual(["icon-32.png", "pane.css", "https://appsforoffice.microsoft.com/lib/1/hosted/office.js", "start.js"]);
  });
});

describe("the server for Excel", () => {
  const certificates = mkdtempSync(join(tmpdir(), "lotwright-certificate-"));
  const server = createServer();
  let authority: Buffer;
  let port: number;

  beforeAll(async () => {
    const [ca, cert, key] = ["ca.crt", "localhost.crt", "localhost.key"].map((name) => join(certificates, name)) as [string, string, string];
    const quiet = vi.spyOn(console, "log").mockImplementation(() => {});
    await generateCertificates(ca, cert, key);
    quiet.mockRestore();
    authority = readFileSync(ca);
    server.on("request", serveFolder(built.folder));
    server.setSecureContext({ cert: readFileSync(cert), key: readFileSync(key) });
    mkdirSync(join(built.folder, "folder"));
    writeFileSync(join(built.folder, "folder", "inside.txt"), "deeper");
    symlinkSync(ca, join(built.folder, "link.txt"));
    await listen(server, 0);
    ({ port } = server.address() as AddressInfo);
  });
  afterAll(() => {
    server.close();
    rmSync(certificates, { recursive: true });
  });

  const ask = (path: string, method = "GET", headers: Record<string, string> = {}): Promise<{ status: number; type: string; body: string; headers: Record<string, unknown> }> =>
    new Promise((resolve, reject) => {
      const asking = request({ host: "localhost", servername: "localhost", port, path, method, headers, ca: authority }, (response) => {
        let body = "";
        response.on("data", (part) => (body += part));
        response.on("end", () => resolve({ status: response.statusCode ?? 0, type: String(response.headers["content-type"]), body, headers: response.headers }));
      });
      asking.on("error", reject);
      asking.end();
    });

  it("gives the page over https, and lets Excel on the web read it fresh", async () => {
    const { status, type, body, headers } = await ask("/");
    expect([status, type]).toEqual([200, "text/html; charset=utf-8"]);
    expect(body).toContain('src="start.js"');
    expect(headers).toMatchObject({ "cache-control": "no-store", "access-control-allow-origin": "*" });
    expect((await ask("/functions.json?v=1")).type).toBe("application/json; charset=utf-8");
  });

  it.each([
    "/../package.json", "/..%2fpackage.json", "/..%2Fpackage.json", "/%2e%2e/package.json", "/..%5cpackage.json", "/..\\package.json", "/index.html%00.png", "/%00",
    "/missing.js", "/.hidden", "/manifest.xml/", "//etc/passwd", "/etc/passwd", "//", "/%", "/constructor", "/folder", "/link.txt", "/folder/inside.txt",
  ])("has no %s", async (path) => {
    expect(await ask(path)).toMatchObject({ status: 404, body: "There is no such file here" });
  });

  it("only gives", async () => {
    for (const method of ["POST", "PUT", "DELETE", "OPTIONS", "PATCH"]) expect(await ask("/index.html", method)).toMatchObject({ status: 405, headers: { allow: "GET, HEAD" } });
    expect((await ask("/index.html", "HEAD")).body).toBe("");
  });

  it.each(["example.org", "example.org:3000", "localhost.example.org:3000", "127.0.0.1.example.org", "notlocalhost", "localhost:3000@example.org", "[::1].example.org", "192.168.0.7:3000", "0.0.0.0:3000"])("refuses a page that comes by the name %j", async (host) => {
    expect(await ask("/", "GET", { host })).toMatchObject({ status: 403, body: "Lotwright answers on this machine alone: open it at localhost" });
  });

  it.each(["localhost:3000", "LOCALHOST", "127.0.0.1:3000", "[::1]:3000", "[::1]"])("answers to %s", async (host) => {
    expect((await ask("/", "GET", { host })).status).toBe(200);
  });

  it("listens on this machine alone", async () => {
    expect(["127.0.0.1", "::1"]).toContain((server.address() as AddressInfo).address);
    for (const address of outerAddresses()) {
      const open = await openServer(address);
      expect(await reach(address, (open.address() as AddressInfo).port), `${address} can be reached`).toBe("connected");
      open.close();
      expect(await reach(address, port), address).toBe("ECONNREFUSED");
    }
  });
});
