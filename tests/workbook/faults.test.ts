import { strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { FileFault, openXlsx } from "../../src/workbook/file";
import { crc32 } from "../../src/workbook/xlsx/crc32";
import { type Handmade, handmade, handmadeParts, MAIN, relationships, sheet, SHEET } from "./handmade";

const MEGABYTE = 1024 * 1024;
const COMPOUND = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];

/** Opens a file and reads every cell of it, as a command would. */
function readAll(bytes: Uint8Array): number {
  const file = openXlsx(bytes);
  file.parts();
  return file.sheets.reduce((count, { name }) => count + [...file.cells(name)].length, 0);
}

function faultOf(bytes: Uint8Array): string {
  try {
    readAll(bytes);
  } catch (error) {
    if (error instanceof FileFault) return error.message;
    throw error;
  }
  return "no fault";
}

const faultOfParts = (what: Handmade): string => faultOf(handmade(what));
const compound = (stream: string): Uint8Array => new Uint8Array([...COMPOUND, ...new Array<number>(1000).fill(0), ...[...stream].flatMap((letter) => [letter.charCodeAt(0), 0])]);
const damaged = (what: string): string => `Cannot read the workbook: it is damaged, ${what}: take a fresh copy, or open it in Excel and save it again`;

describe("a file that is no workbook", () => {
  it.each<[string, Uint8Array, string]>([
    ["an empty file", new Uint8Array(), "Cannot open the file: it is empty: choose a workbook that was saved as .xlsx"],
    ["a text", strToU8("lot;weight\n1;500\n"), "Cannot open the file: it is not an .xlsx workbook, whatever its name: open it in a spreadsheet program and save it as .xlsx"],
    ["a locked workbook", compound("EncryptedPackage"), "Cannot open the workbook: it is locked with a password: open it in Excel, remove the password (File, Info, Protect Workbook) and save it"],
    ["an .xls workbook", compound("Workbook"), "Cannot open the file: it is a workbook of the old .xls kind: open it in Excel and save it as .xlsx"],
    ["an old Word document", compound("WordDocument"), "Cannot open the file: it is an Office file of an old kind: open it in Excel and save it as .xlsx"],
    ["a zip of something", zipSync({ "photo.txt": strToU8("x") }), "Cannot open the file: it is a zip of something else, not an .xlsx workbook: open it in a spreadsheet program and save it as .xlsx"],
    ["an OpenDocument sheet", zipSync({ mimetype: strToU8("x"), "content.xml": strToU8("<x/>") }), "Cannot open the file: it is an OpenDocument file, not an .xlsx workbook: open it in a spreadsheet program and save it as .xlsx"],
  ])("is %s, and the sentence says what to do", (_, bytes, sentence) => {
    expect(faultOf(bytes)).toBe(sentence);
  });

  it.each([
    ["application/vnd.ms-excel.sheet.binary.macroEnabled.main", "a binary workbook (.xlsb)"],
    ["application/vnd.openxmlformats-officedocument.wordprocessingml.document.main+xml", "a Word document"],
    ["application/vnd.openxmlformats-officedocument.presentationml.presentation.main+xml", "a PowerPoint presentation"],
    ["application/octet-stream", "an Office file of another kind"],
  ])("is told by its content type: %s", (type, what) => {
    const types = `<Types><Override PartName="/xl/workbook.xml" ContentType="${type}"/></Types>`;
    expect(faultOfParts({ parts: { "[Content_Types].xml": types } })).toContain(`it is ${what}, not an .xlsx workbook`);
  });

  it("is a zip whose parts were locked", () => {
    const bytes = handmade();
    const view = new DataView(bytes.buffer);
    for (let at = 0; at < bytes.length - 4; at++) if (view.getUint32(at, true) === 0x02014b50) view.setUint16(at + 8, view.getUint16(at + 8, true) | 1, true);
    expect(faultOf(bytes)).toBe("Cannot open the file: its parts are locked with a zip password: unpack it and save it in Excel without one");
  });
});

describe("a damaged file", () => {
  const whole = handmade({ sheets: { Lots: sheet('<row r="1"><c r="A1"><f>SUM(B1:B9)</f><v>1</v></c></row>') } });

  it("opens while it is whole", () => {
    expect(readAll(whole)).toBe(1);
  });

  it("is refused in a sentence at whatever length it was cut off", () => {
    for (let length = 0; length < whole.length; length += length < 100 || length > whole.length - 100 ? 1 : 7)
      expect(faultOf(whole.slice(0, length)), `cut at ${length}`).toMatch(/^Cannot (?:open|read) the (?:file|workbook): /);
  });

  it("is refused in a sentence, or reads the same, whichever byte of it was changed", () => {
    for (let at = 0; at < whole.length; at++) {
      const broken = whole.slice();
      broken[at] = (broken[at] ?? 0) ^ 0x55;
      const fault = faultOf(broken);
      if (fault !== "no fault") expect(fault, `byte ${at}`).toMatch(/^Cannot (?:open|read) the (?:file|workbook): /);
      else expect([...openXlsx(broken).cells("Lots")], `byte ${at}`).toEqual([...openXlsx(whole).cells("Lots")]);
    }
  });

  it("is found out by its checksum", () => {
    const parts = handmadeParts({ sheets: { Lots: sheet('<row r="1"><c r="A1"><v>123456</v></c></row>') } });
    const stored = zipSync(parts, { level: 0 });
    const at = new TextDecoder("latin1").decode(stored).indexOf("123456");
    stored[at] = 57;
    expect(faultOf(stored)).toBe(damaged(`its part ${SHEET} does not match its checksum`));
  });

  it.each<[string, Handmade, string]>([
    ["without a sheet", { parts: { [SHEET]: null } }, damaged("its sheet Lots is missing")],
    ["without its links", { parts: { "xl/_rels/workbook.xml.rels": null } }, damaged("its sheet Lots is missing")],
    ["whose main part is a sheet", { parts: { "xl/workbook.xml": sheet("") } }, damaged("its main part is not a workbook")],
    ["whose workbook is no XML", { parts: { "xl/workbook.xml": "lots" } }, damaged("a part of it holds no XML")],
    ["whose sheet is written in other words", { parts: { [SHEET]: "<worksheet><sheetData/></worksheet>" } }, "Cannot read the workbook: a part of it is not written in the words of a spreadsheet: open it in Excel and save it again as .xlsx"],
    ["whose sheet has no rows element", { parts: { [SHEET]: `<worksheet xmlns="${MAIN}"/>` } }, damaged("a sheet of it has no rows element")],
  ])("%s says what is wrong", (_, what, sentence) => {
    expect(faultOfParts(what)).toBe(sentence);
  });

  it("with two parts of one name is refused, since programs differ in which they take", () => {
    const parts = handmadeParts({});
    expect(faultOf(zipSync({ ...parts, "XL/Workbook.xml": strToU8("<other/>") }))).toBe(damaged("it holds two parts named XL/Workbook.xml"));
  });

  it("with two sheets of one name is refused, since a formula could mean either", () => {
    const workbook = new TextDecoder().decode(handmadeParts({ sheets: { Lots: sheet(""), Second: sheet("") } })["xl/workbook.xml"]);
    expect(faultOfParts({ sheets: { Lots: sheet(""), Second: sheet("") }, parts: { "xl/workbook.xml": workbook.replace('name="Second"', 'name="LOTS"') } })).toBe(damaged("two of its sheets are named LOTS"));
  });

  it("with two sheets in one part is refused, since a change would reach both", () => {
    const links = relationships([["worksheet", "worksheets/sheet1.xml"], ["worksheet", "worksheets/sheet1.xml"]]);
    expect(faultOfParts({ sheets: { A: sheet(""), B: sheet("") }, parts: { "xl/_rels/workbook.xml.rels": links } })).toBe(damaged("two of its sheets, one of them B, are one part"));
  });
});

describe("a file made to do harm", () => {
  it("that is too large is refused before it is read", () => {
    const bytes = new Uint8Array(100 * MEGABYTE + 1);
    bytes.set([0x50, 0x4b, 3, 4]);
    expect(faultOf(bytes)).toBe("Cannot open the file: it is larger than 100 MB: split it into smaller workbooks");
  });

  it("that unpacks to far more than its size is refused before it is unpacked", () => {
    const bomb = zipSync({ ...handmadeParts({}), "xl/media/image1.bin": new Uint8Array(20 * MEGABYTE) });
    expect(bomb.length).toBeLessThan(100_000);
    expect(faultOf(bomb)).toBe("Cannot open the file: a part of it unpacks to more than 300 times its size, as no workbook does: split it into smaller workbooks");
  });

  it("that says it unpacks to more than 1 GB is refused", () => {
    const bytes = zipSync({ ...handmadeParts({}), "xl/media/image1.bin": [new Uint8Array(12 * MEGABYTE).map((_, i) => (i * 2_654_435_761) >>> 13), { level: 0 }] });
    const view = new DataView(bytes.buffer, bytes.byteOffset);
    for (let at = 0; at < bytes.length - 4; at++) if (view.getUint32(at, true) === 0x02014b50 && view.getUint32(at + 24, true) > 10 * MEGABYTE) view.setUint32(at + 24, 1025 * MEGABYTE, true);
    expect(faultOf(bytes)).toBe("Cannot open the file: unpacked it would be larger than 1 GB: split it into smaller workbooks");
  });

  it("that unpacks to more than it says is stopped on the way", () => {
    const huge = new Uint8Array(50 * MEGABYTE);
    const parts = handmadeParts({});
    const bytes = zipSync({ ...parts, [SHEET]: huge });
    const view = new DataView(bytes.buffer, bytes.byteOffset);
    const name = strToU8(SHEET);
    for (let at = 0; at < bytes.length - 4; at++)
      if (view.getUint32(at, true) === 0x02014b50 && name.every((byte, i) => bytes[at + 46 + i] === byte)) view.setUint32(at + 24, 1000, true);
    expect(faultOf(bytes)).toBe(damaged(`its part ${SHEET} is larger than it says`));
  });

  it.each([
    ['<!DOCTYPE worksheet [<!ENTITY a "b">]>', SHEET],
    ['<?xml version="1.0"?><!-- x --><!DOCTYPE workbook SYSTEM "https://example.org/x">', "xl/workbook.xml"],
    ['<!DOCTYPE x [<!ENTITY % a SYSTEM "file:///etc/hostname"> %a;]>', "xl/styles.xml"],
  ])("that declares entities is refused: %s", (declaration, part) => {
    const usual: Record<string, string> = { [SHEET]: sheet(""), "xl/workbook.xml": `<workbook xmlns="${MAIN}"/>`, "xl/styles.xml": "<styleSheet/>" };
    const xml = declaration + (usual[part] ?? "").replace(/^<\?.*\?>\n/, "");
    expect(faultOfParts({ parts: { [part]: xml } })).toBe("Cannot read the workbook: it declares XML entities, which no spreadsheet writes: take a fresh copy from someone you trust");
  });

  it("whose links run in circles opens as far as it is a workbook", () => {
    const circle = relationships([["officeDocument", "/xl/workbook.xml"], ["worksheet", "/xl/worksheets/sheet1.xml"]]);
    expect(readAll(handmade({ parts: { "xl/worksheets/_rels/sheet1.xml.rels": circle, "xl/_rels/_rels/workbook.xml.rels.rels": circle } }))).toBe(0);
    expect(faultOfParts({ parts: { "_rels/.rels": relationships([["officeDocument", "_rels/.rels"]]) } })).toContain("it is an Office file of another kind");
  });

  it("with part names that climb out of it, or name what objects have by birth, changes nothing outside", () => {
    const odd = { "../../evil.xml": "<a/>", "/etc/x.xml": "<a/>", "__proto__.xml": "<a/>", __proto__: "x", "constructor/prototype.xml": "<a/>", "xl\\media\\image1.bin": "x" };
    const parts = Object.fromEntries([...Object.entries(handmadeParts({})), ...Object.entries(odd).map(([name, text]) => [name, strToU8(text)] as const)]);
    const file = openXlsx(zipSync(parts));
    expect(Object.getPrototypeOf(file.parts())).toBe(Object.prototype);
    const after = unzipSync(file.patch([{ sheet: "Lots", cell: "A1", value: 1 }]));
    expect(Object.keys(after).sort()).toEqual(Object.keys(parts).sort());
    expect(({} as Record<string, unknown>)["x"]).toBeUndefined();
  });

  it("whose links climb out of it finds nothing there", () => {
    expect(faultOfParts({ parts: { "xl/_rels/workbook.xml.rels": relationships([["worksheet", "../../../../../../etc/hostname"]]) } })).toBe(damaged("its sheet Lots is missing"));
    const outside = relationships([["worksheet", "https://example.org/sheet1.xml"]]).replace("/>", ' TargetMode="External"/>');
    expect(faultOfParts({ parts: { "xl/_rels/workbook.xml.rels": outside } })).toBe(damaged("its sheet Lots is missing"));
  });

  it("in another alphabet than UTF-8 is refused rather than misread", () => {
    const latin = zipSync({ ...handmadeParts({}), [SHEET]: new Uint8Array([...strToU8("<worksheet>"), 0xe9]) });
    expect(faultOf(latin)).toBe(`Cannot read the workbook: its part ${SHEET} is not written in UTF-8: open it in Excel and save it again`);
    const declared = sheet("").replace("UTF-8", "ISO-8859-1");
    expect(faultOfParts({ parts: { [SHEET]: declared } })).toBe(`Cannot read the workbook: its part ${SHEET} is written in ISO-8859-1: open it in Excel and save it again`);
  });

  it("keeps the byte order mark that some programs write", () => {
    const file = openXlsx(handmade({ parts: { [SHEET]: `\uFEFF${sheet("")}` } }));
    const after = unzipSync(file.patch([{ sheet: "Lots", cell: "A1", value: 1 }]))[SHEET];
    expect([...(after?.slice(0, 3) ?? [])]).toEqual([0xef, 0xbb, 0xbf]);
    expect(after && crc32(after)).not.toBe(crc32(strToU8(`\uFEFF${sheet("")}`)));
  });
});
