import { expect, it } from "vitest";
import { openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";
import { contract } from "./contract";
import { contractBook } from "./contract-book";
import { handmade, sheet } from "./handmade";

contract(
  "a file",
  async () => {
    const port = new FilePort(openXlsx(contractBook()));
    return { port, state: async () => Buffer.from(port.file.bytes).toString("base64") };
  },
  { refused: "=1+", computes: true },
);

it("computes in a file what holds a function of ours and what depends on it, and leaves what it cannot compute as another program left it", async () => {
  const cells =
    '<row r="1"><c r="A1"><v>10</v></c><c r="B1"><f>_xldudf_LOT_COPPER(A1,"lb")</f><v>1</v></c><c r="C1"><f>B1*2</f><v>2</v></c><c r="D1"><f>BAHTTEXT(B1)</f><v>7</v></c></row>' +
    '<row r="2"><c r="A2" t="e"><f>_xldudf_LOT_RECOVERY(98.5,100)</f><v>#NAME?</v></c></row>';
  const port = new FilePort(openXlsx(handmade({ sheets: { Lots: sheet(cells) } })));
  const { undo } = await port.write([{ sheet: "Lots", cell: "F9", content: "Drop of May" }]);
  await port.recalculate();
  const shown = async (range: string): Promise<unknown[]> => ((await port.read({ sheet: "Lots", range }))[0] ?? []).map(({ value }) => value);
  const [copper] = await shown("B1");
  expect(copper).toBeCloseTo(2.9455, 4);
  expect(await shown("C1:D1")).toEqual([2 * Number(copper), 7]);
  expect(await shown("A2")).toEqual([0.985]);
  const again = port.file;
  await port.recalculate();
  expect(port.file).toBe(again);
  await undo();
  expect(await shown("F9")).toEqual([null]);
});
