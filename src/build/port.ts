import type { Server } from "node:net";
import { parseNumber } from "office-addin-cli";

/** The port to serve at, from PORT where it is set. */
export function portOf(written: string | undefined, otherwise: number): number {
  if (written === undefined || written === "") return otherwise;
  const refusal = `Cannot serve at PORT=${written}: write a whole number from 1 to 65535`;
  const port = parseNumber(written, refusal);
  // It takes the number that a text begins with, as in 3000x.
  if (port === undefined || String(port) !== written || !Number.isInteger(port) || port < 1 || port > 65_535) throw new Error(refusal);
  return port;
}

/** Listens on this machine alone. */
export function listen(server: Server, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    server.once("error", (error: NodeJS.ErrnoException) => reject(new Error(listening(error, port))));
    server.listen(port, "localhost", resolve);
  });
}

function listening({ code, message }: NodeJS.ErrnoException, port: number): string {
  if (code === "EADDRINUSE") return `Port ${port} is taken: stop what uses it, or set PORT to another, such as ${port + 1}`;
  if (code === "EACCES") return `Port ${port} is kept for the system: set PORT to one above 1023`;
  return `Cannot serve at port ${port}: ${message}`;
}
