import { expect, it } from "vitest";
import { OpenBook } from "../../src/host/open-book";
import { lookThrough } from "../../src/pane/repair/look-through";
import { apply, plan } from "../../src/workbook/plan";
import { openXlsx } from "../../src/workbook/file";
import { repairBooks } from "../pane/repair-book";

it("repairs in the grid what another program left, saves it as Excel stores it, and takes it back in one step", async () => {
  const book = new OpenBook("lots.xlsx", repairBooks.wrong);
  const { port } = book;
  const look = async (): Promise<Record<string, string>> => Object.fromEntries((await lookThrough(port, ".", async () => true)).findings.map(({ sheet, cell, kind }) => [`${sheet}!${cell}`, kind]));
  // The grid computes as it opens, so that nothing waits to be computed.
  const wrong = { "Lots!D3": "near", "Lots!D4": "text", "Lots!D5": "prefix", "Lots!D6": "at", "Lots!D8": "value", "Lots!D10": "missing", "Lots!D11": "unknown", "Lots!D12": "letters" };
  expect(await look()).toEqual(wrong);
  const { findings } = await lookThrough(port, ".", async () => true);
  const { undo } = await apply(port, await plan(port, findings.flatMap(({ write }) => write ?? [])), () => true);
  await port.recalculate();
  expect(await look()).toEqual({ "Lots!D8": "value", "Lots!D10": "missing", "Lots!D11": "unknown" });
  const saved = new Map([...openXlsx(book.patched()).cells("Lots")].map((cell) => [cell.address, cell]));
  for (const cell of ["D3", "D4", "D5", "D6", "D12"]) expect(saved.get(cell), cell).toMatchObject({ formula: `=LOT.FINEWEIGHT(B${cell.slice(1)},"g",C${cell.slice(1)})`, error: false });
  expect(saved.get("D4")?.value).toBeCloseTo((310 * 0.8) / 31.1034768, 9);
  await undo();
  expect(await look()).toEqual(wrong);
});
