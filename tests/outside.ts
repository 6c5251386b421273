import { describe, it } from "vitest";
import { type Tool, recordNotRun, tools } from "./outside-tools";

/**
 * Checks against a tool from outside. `body` gets where it was found: the path of a program, or of a folder of data.
 * Without the tool the checks are skipped and named at the end of the run; where OUTSIDE=required they fail.
 */
export function outside(tool: Tool, title: string, body: (found: string) => void): void {
  const found = tools[tool].find();
  if (found !== undefined) describe(title, () => body(found));
  else if (process.env["OUTSIDE"] === "required")
    it(title, () => {
      throw new Error(`Cannot hold the arithmetic against ${tool}: it was not found: install ${tools[tool].get}`);
    });
  else {
    recordNotRun(tool, title);
    describe.skip(title, () => it(`needs ${tool}`, () => undefined));
  }
}
