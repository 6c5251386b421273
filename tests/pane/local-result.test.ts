import { expect, it } from "vitest";
import { localResult } from "../../src/pane/local-result";

it("writes a number that an example shows with the user's sign, cut off or not, and leaves every text as it is", () => {
  const local = (shows: string): string => localResult(shows, { decimal: "," });
  expect(["14.58333…", "-0.5", "925"].map(local)).toEqual(["14,58333…", "-0,5", "925"]);
  for (const text of ["Lotwright 0.1.0, atomic weights 2024", '#VALUE! Cannot use value = 92.5: write "92.5%" or 925', "Opening"]) expect(local(text)).toBe(text);
  expect(localResult("14.58333…", { decimal: "." })).toBe("14.58333…");
});
