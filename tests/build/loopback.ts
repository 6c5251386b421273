import { type Server, createServer } from "node:http";
import { connect } from "node:net";
import { networkInterfaces } from "node:os";

/** The addresses by which other machines would reach this one. */
export const outerAddresses = (): string[] =>
  Object.values(networkInterfaces())
    .flatMap((all) => all ?? [])
    .filter(({ internal, address }) => !internal && !address.startsWith("fe80"))
    .map(({ address }) => address);

/** How a connection ends: "connected", or the system's own word for why not. */
export const reach = (host: string, port: number): Promise<string> =>
  new Promise((resolve) => {
    const socket = connect({ host, port, timeout: 3000 });
    socket.once("connect", () => resolve("connected"));
    socket.once("timeout", () => resolve("ETIMEDOUT"));
    socket.once("error", ({ code }: NodeJS.ErrnoException) => resolve(code ?? "error"));
    socket.once("connect", () => socket.destroy());
    socket.once("timeout", () => socket.destroy());
  });

/** A server that any machine reaches, to show that an address could be reached at all. */
export function openServer(host: string): Promise<Server> {
  const server = createServer();
  return new Promise((resolve, reject) => {
    server.once("error", reject);
    server.listen(0, host, () => resolve(server));
  });
}
