import { expect, it } from "vitest";

const ready = (await import("../../src/build/ready.mjs" as string)) as { checkNode(version: string): void };

it.each(["18.19.0", "20.10.0", "16.0.0"])("Node %s is too old, and the sentence says what to install", (version) => {
  expect(() => ready.checkNode(version)).toThrow(`needs Node 20.11 or newer and this is Node ${version}: install the LTS version from https://nodejs.org`);
});

it.each(["20.11.0", "20.20.1", "22.1.0", "24.0.0"])("Node %s is new enough", (version) => {
  expect(() => ready.checkNode(version)).not.toThrow();
});
