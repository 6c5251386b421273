import { describe, expect, it } from "vitest";
import type { FlowPart } from "../../src/lots/settlement-figures";
import { sheetColours } from "../../src/pane/picture/colours";
import type { Drawing } from "../../src/pane/picture/drawing";
import { flowPicture } from "../../src/pane/settle-a-lot/flow-picture";
import { flowWords } from "../../src/pane/settle-a-lot/statement-view";

const WIDTH = 272;
const drawn = (parts: readonly (readonly [label: string, ozt: number])[]): Drawing | null => {
  const charge = parts.reduce((sum, [, ozt]) => sum + ozt, 0);
  return flowPicture(parts.map(([label, ozt]): FlowPart => ({ label, ozt, share: ozt / charge })), flowWords({ decimal: "." }), sheetColours, WIDTH);
};

/** How wide each band is where it begins, in the order of the parts. */
const bands = (drawing: Drawing | null): { readonly width: number; readonly fill: string }[] =>
  (drawing?.shapes ?? []).filter(({ tag }) => tag === "path").map(({ attributes }) => {
    const [, top, bottom] = /^M\S+ (\S+)C.* (\S+)Z$/.exec(String(attributes["d"])) ?? [];
    return { width: Number(bottom) - Number(top), fill: String(attributes["fill"]) };
  });
const texts = (drawing: Drawing | null): string[] => (drawing?.shapes ?? []).filter(({ tag }) => tag === "text").map(({ children }) => children.join(""));

describe("the picture of where the silver went", () => {
  it("draws each part as wide as its weight", () => {
    const [crystal, stubs, lost] = bands(drawn([["Crystal", 80], ["On stubs", 15], ["Unaccounted", 5]]));
    expect((crystal?.width ?? 0) / (stubs?.width ?? 1)).toBeCloseTo(80 / 15, 1);
    expect((stubs?.width ?? 0) / (lost?.width ?? 1)).toBeCloseTo(3, 1);
    expect([crystal?.fill, lost?.fill]).toEqual([sheetColours.area, sheetColours.caution]);
  });

  it("says in words what it shows, and keeps all words inside", () => {
    const drawing = drawn([["Crystal", 1234.5], ["Left in liquor", 0.05], ["Filter and basket residues", 0.35], ["Unaccounted", 12.1]]);
    expect(drawing?.alt).toBe("Where the silver went: of 1,247.000 ozt charged, crystal 1,234.500 ozt (99.00 %), left in liquor 0.050 ozt (0.00 %), filter and basket residues 0.350 ozt (0.03 %), unaccounted 12.100 ozt (0.97 %)");
    for (const { tag, attributes } of drawing?.shapes ?? []) if (tag === "text") expect(Number(attributes["y"])).toBeLessThanOrEqual((drawing?.height ?? 0) - 2);
  });

  it("lets what came out beyond the charge come in at the left on its own, and says how much", () => {
    const drawing = drawn([["Crystal", 110], ["Unaccounted", -10]]);
    const [explained, unexplained] = bands(drawing);
    expect((explained?.width ?? 0) / (unexplained?.width ?? 1)).toBeCloseTo(10, 0);
    expect(unexplained?.fill).toBe(sheetColours.caution);
    expect(texts(drawing)).toContain("10.000 ozt more came out than went in");
    expect(drawing?.alt).toMatch(/; 10\.000 ozt more came out than went in$/);
    expect(texts(drawing)).not.toContain("Unaccounted");
  });

  it("says which of the two is out where less was dropped than was worked up", () => {
    expect(texts(drawn([["Crystal", 95], ["Dropped, still in process", -3], ["Unaccounted", 8]]))).toContain("3.000 ozt more was worked up than dropped");
  });

  it("draws nothing where nothing was charged", () => {
    expect(drawn([["Crystal", 0], ["Unaccounted", 0]])).toBeNull();
  });
});
