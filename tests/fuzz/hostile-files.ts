import { strToU8, zipSync } from "fflate";
import { type Handmade, handmade, handmadeParts, relationships, sheet, SHEET } from "../workbook/handmade";

const LOT = '_xldudf_LOT_FINEWEIGHT(A1,"g",925)';
const row = (number: number, cells: string): string => `<row r="${number}">${cells}</row>`;
const computed = (formula: string): string => `<f>${formula}</f><v>1</v>`;
const FIRST = `<c r="A1"><v>5</v></c><c r="B1">${computed(LOT)}</c>`;
const ours = (more = "", head = ""): string => sheet(row(1, FIRST) + more, head);
const lots = (rows: string, what: Handmade = {}): Uint8Array => handmade({ sheets: { Lots: sheet(rows) }, ...what });
const count = <T>(length: number, make: (i: number) => T): T[] => Array.from({ length }, (_, i) => make(i));

/** One workbook whose second sheet has another name or entry in the list of sheets. */
function second(from: string, to: string): Uint8Array {
  const parts = handmadeParts({ sheets: { Lots: ours(), Second: sheet("") } });
  const workbook = new TextDecoder().decode(parts["xl/workbook.xml"]);
  return zipSync({ ...parts, "xl/workbook.xml": strToU8(workbook.replace(from, to)) });
}

/** Files that a mishap or ill will could make; each is either computed right or refused in a sentence. */
export const hostileFiles: Readonly<Record<string, () => Uint8Array>> = {
  "a cell that depends on itself through ours": () => lots(row(1, `<c r="A1">${computed("B1")}</c><c r="B1">${computed(LOT)}</c>`)),
  "a shared formula without its text": () => lots(row(1, `<c r="A1"><f t="shared" ref="A1:A9" si="0"/><v>1</v></c><c r="B1">${computed(LOT)}</c>`)),
  "shared formulas that name each other": () => lots(row(1, `<c r="A1"><f t="shared" ref="A1:B1" si="0">B1</f><v>1</v></c><c r="B1"><f t="shared" si="0"/><v>1</v></c><c r="C1">${computed(LOT)}</c>`)),
  "200 sheets": () => handmade({ sheets: Object.fromEntries(count(200, (i) => [`Sheet ${i}`, ours()])) }),
  "a cell in the last row": () => lots(row(1, FIRST) + row(1_048_576, '<c r="A1048576"><v>5</v></c>')),
  "a cell in the last column": () => lots(row(1, `${FIRST}<c r="XFD1"><v>5</v></c>`)),
  "a cell in the last corner": () => lots(row(1, FIRST) + row(1_048_576, '<c r="XFD1048576"><v>5</v></c>')),
  "a cell beyond the last row": () => lots(row(1, FIRST) + row(1_048_577, '<c r="A1048577"><v>5</v></c>')),
  "all 16,384 columns": () => lots(row(1, FIRST + "<c><v>5</v></c>".repeat(16_382))),
  "16,385 columns": () => lots(row(1, FIRST + "<c><v>5</v></c>".repeat(16_383))),
  "a dimension that lies": () => handmade({ sheets: { Lots: ours("", '<dimension ref="ZZZ0:A99999999999"/>') } }),
  "a dimension that is too small": () => handmade({ sheets: { Lots: ours("", '<dimension ref="A1"/>') } }),
  "columns without end": () => handmade({ sheets: { Lots: ours("", '<cols><col min="-5" max="1e308" hidden="1"/></cols>') } }),
  "a shared text that is not there": () => lots(row(1, `<c r="A1" t="s"><v>99</v></c><c r="B1">${computed(LOT)}</c>`)),
  "a shared text before the first": () => lots(row(1, `<c r="A1" t="s"><v>-1</v></c><c r="B1">${computed(LOT)}</c>`)),
  "styles that are not there": () => lots(row(1, `<c r="A1" s="999999999"><v>5</v></c><c r="B1" s="-7">${computed(LOT)}</c>`)),
  "a style that is no number": () => lots(row(1, `<c r="A1" s="x"><v>5</v></c><c r="B1" s="x">${computed(LOT)}</c>`)),
  "a number too large": () => lots(row(1, `<c r="A1"><v>1e400</v></c><c r="B1">${computed(LOT)}</c>`)),
  "a formula that fills four columns": () => lots(row(1, `<c r="A1"><v>5</v></c><c r="B1"><f t="array" ref="B1:E1048576">${LOT}</f><v>1</v></c>`)),
  "a formula in thousands of brackets": () => lots(row(1, `<c r="A1"><v>5</v></c><c r="B1">${computed(`${"(".repeat(4000)}${LOT}${")".repeat(4000)}`)}</c>`)),
  "a formula that closes too many brackets": () => lots(row(1, `<c r="A1"><v>5</v></c><c r="B1">${computed(`${LOT})`)}</c>`)),
  "a formula whose text is not closed": () => lots(row(1, `<c r="A1"><v>5</v></c><c r="B1">${computed(`${LOT}&amp;"`)}</c>`)),
  "a formula that names a sheet that is not there": () => lots(row(1, `<c r="A1">${computed("Gone!A1")}</c><c r="B1">${computed(LOT)}</c>`)),
  "a hundred thousand elements in each other": () => lots(row(1, FIRST) + "<x>".repeat(100_000) + "</x>".repeat(100_000)),
  "a hundred thousand entities": () => lots(row(1, `<c r="A1" t="str"><v>${"&amp;#38;".repeat(100_000)}</v></c><c r="B1">${computed(LOT)}</c>`)),
  "a million times one declared entity": () =>
    handmade({ parts: { [SHEET]: `<!DOCTYPE x [${count(9, (i) => `<!ENTITY a${i + 1} "${`&a${i};`.repeat(10)}">`).join("")}<!ENTITY a0 "x">]>${ours().replace(/^<\?.*\?>\n/, "").replace("<v>5</v>", "<v>&a9;</v>")}` } }),
  "an entity that lies in another file": () => handmade({ parts: { [SHEET]: `<!DOCTYPE x [<!ENTITY a SYSTEM "file:///dev/zero">]>${ours().replace(/^<\?.*\?>\n/, "").replace("<v>5</v>", "<v>&a;</v>")}` } }),
  "names for nothing and for what objects have by birth": () =>
    lots(row(1, FIRST), { workbookTail: '<definedNames><definedName name="A1">Lots!$A$1</definedName><definedName name="x y">Nope!A1</definedName><definedName name="zz" localSheetId="99">Lots!A1</definedName><definedName name="__proto__">Lots!$A$1</definedName><definedName name="gone">#REF!</definedName><definedName name="far">Gone!$A$1:$B$2</definedName></definedNames>' }),
  "two sheets of one name": () => second('name="Second"', 'name="Lots"'),
  "two sheets of one name in other letters": () => second('name="Second"', 'name="LOTS"'),
  "a sheet without a name": () => second('name="Second"', 'name=""'),
  "a sheet whose name no sheet may have": () => second('name="Second"', "name=\"a/b:*?[]&apos;&#1;\""),
  "a sheet named as what objects have by birth": () => second('name="Second"', 'name="__proto__"'),
  "no sheet": () => handmade({ sheets: {} }),
  "links between parts that run in circles": () => handmade({ sheets: { Lots: ours() }, parts: { "xl/worksheets/_rels/sheet1.xml.rels": relationships([["table", "../worksheets/sheet1.xml"], ["drawing", "sheet1.xml"], ["comments", "../workbook.xml"]]) } }),
  "a link to a table that is not there": () => handmade({ sheets: { Lots: ours() }, parts: { "xl/worksheets/_rels/sheet1.xml.rels": relationships([["table", "../tables/table1.xml"], ["comments", "../comments1.xml"]]) } }),
  "a chain of ten thousand cells": () => lots(row(1, FIRST) + count(10_000, (i) => row(i + 2, `<c r="B${i + 2}">${computed(`B${i + 1}+1`)}</c>`)).join("")),
  "a chain of ten thousand cells, the last one first": () => lots(count(10_000, (i) => row(i + 1, `<c r="B${i + 1}">${computed(i === 9999 ? '_xldudf_LOT_FINEWEIGHT(5,"g",925)' : `B${i + 2}+1`)}</c>`)).join("")),
  "a spill larger than its range": () => lots(row(1, '<c r="B1"><f t="array" ref="B1:B5">_xldudf_LOT_RECOVERIES(SEQUENCE(2000),SEQUENCE(2000))</f><v>1</v></c>')),
  "a spill onto filled cells": () => lots(row(1, '<c r="B1"><f t="array" ref="B1">_xldudf_LOT_BARS(250,"ozt",100,"ozt")</f><v>1</v></c><c r="C1"><v>7</v></c>')),
  "whole columns and a whole sheet as arguments": () => lots(row(1, `<c r="A1"><v>5</v></c><c r="E1">${computed("_xldudf_LOT_LOTCOST(A:A,A:A)")}</c><c r="F1">${computed("_xldudf_LOT_LOTCOST(Lots!A2:D1048576,Lots!A2:D1048576)")}</c>`)),
};
