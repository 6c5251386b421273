import { type AddressInfo, createServer } from "node:net";
import { describe, expect, it } from "vitest";
import { listen, portOf } from "../../src/build/port";

describe("the port", () => {
  it("is the one in PORT, or the usual one", () => {
    expect(portOf("3001", 3000)).toBe(3001);
    expect(portOf(undefined, 3000)).toBe(3000);
    expect(portOf("", 3000)).toBe(3000);
  });

  it.each(["3000x", "0", "65536", "-1", "30.5", "web", " 3000", "1e3"])('"%s" is refused', (written) => {
    expect(() => portOf(written, 3000)).toThrow(`Cannot serve at PORT=${written}: write a whole number from 1 to 65535`);
  });

  it("that is taken is named, with another to try", async () => {
    const first = createServer();
    await new Promise<void>((done) => first.listen(0, "localhost", done));
    const { port } = first.address() as AddressInfo;
    await expect(listen(createServer(), port)).rejects.toThrow(`Port ${port} is taken: stop what uses it, or set PORT to another, such as ${port + 1}`);
    first.close();
  });
});
