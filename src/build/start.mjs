import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";
import { NotReady, hostBuilt, installed, run } from "./ready.mjs";
import { serve } from "./serve.mjs";

const USUAL_PORT = 8417;

function wishes(words, port) {
  const unknown = words.find((word) => word !== "--no-open");
  if (unknown !== undefined) throw new NotReady(`Cannot use ${unknown}: npm start takes --no-open alone (npm start -- --no-open), and PORT from the environment`);
  if (port !== undefined && !(/^\d{1,5}$/.test(port) && Number(port) <= 65535)) throw new NotReady(`Cannot use PORT=${port}: it must be a number from 1 to 65535, such as ${USUAL_PORT}`);
  return { opens: words.length === 0, port: port === undefined ? USUAL_PORT : Number(port) };
}

function refusal(fault, port) {
  if (fault.code === "EADDRINUSE")
    return `Cannot use port ${port}: another program has it, perhaps a Lotwright that still runs (then open http://127.0.0.1:${port}/). To choose another port: ${another(port)}`;
  if (fault.code === "EACCES") return `Cannot use port ${port}: this computer does not let a program of yours have it. Choose one above 1023: ${another(USUAL_PORT - 1)}`;
  return `Cannot serve the page: ${fault.message}`;
}

const next = (port) => (port < 65535 ? port + 1 : USUAL_PORT);
const another = (port) => (process.platform === "win32" ? `set PORT=${next(port)}&& npm start` : `PORT=${next(port)} npm start`);

/** The address is printed too, so it does no harm when no browser opens. */
function open(address) {
  const [command, ...args] = { win32: ["cmd", "/c", "start", "", address], darwin: ["open", address] }[process.platform] ?? ["xdg-open", address];
  spawn(command, args, { stdio: "ignore", detached: true }).on("error", () => undefined).unref();
}

await run(async () => {
  const { opens, port } = wishes(process.argv.slice(2), process.env["PORT"]);
  installed();
  hostBuilt();
  const server = await serve(fileURLToPath(new URL("../../dist/host/", import.meta.url)), port).catch((fault) => {
    throw new NotReady(refusal(fault, port));
  });
  for (const signal of ["SIGINT", "SIGTERM"])
    process.once(signal, () => {
      server.close();
      server.closeAllConnections();
    });
  const address = `http://127.0.0.1:${server.address().port}/`;
  console.log(`Lotwright is at ${address}   Ctrl+C ends it`);
  if (opens) open(address);
});
