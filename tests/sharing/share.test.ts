import { readFileSync } from "node:fs";
import { strToU8, unzipSync, zipSync } from "fflate";
import { beforeAll, describe, expect, it } from "vitest";
import { ADD_IN_ID, share } from "../../src/sharing/share";
import { unshare } from "../../src/sharing/unshare";
import { type Cell, openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";
import { outside } from "../outside";
import { handmade, relationships, sheet } from "../workbook/handmade";
import { convertedTo, shownBy } from "../workbook/libreoffice";
import { shopBook } from "../workbook/written-by-excelts";

const sample = new Uint8Array(readFileSync(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url)));

/** A book with a chart, a picture, a comment, a list to choose from, and formulas of ours in it. */
async function shopWithFormulas(): Promise<Uint8Array> {
  const port = new FilePort(openXlsx(new Uint8Array(await shopBook())));
  await port.write([
    { sheet: "Lots", cell: "H2", content: '=LOT.COPPER(E2,"g")' },
    { sheet: "Lots", cell: "H3", content: '=ROUND(LOT.COPPER(E3,"g","13%"),1)+1' },
    { sheet: "Lots", cell: "J2", content: '=LOT.COPPERS(E2:E4,"g")' },
    { sheet: "Lots", cell: "H5", content: "=LOT.VERSION()" },
    { sheet: "Lots", cell: "H6", content: '=LOT.COPPER(E2,"oz")' },
  ]);
  return port.file.bytes;
}

const books: Readonly<Record<string, () => Promise<Uint8Array>>> = { "the sample": async () => sample, "a workbook with a chart, a picture, a comment and a list": shopWithFormulas };

const cellsOf = (bytes: Uint8Array): Map<string, Cell> => {
  const file = openXlsx(bytes);
  return new Map(file.sheets.flatMap(({ name }) => [...file.cells(name)].map((cell) => [`${name}!${cell.address}`, cell] as const)));
};
const decode = (bytes: Uint8Array | undefined): string => new TextDecoder().decode(bytes ?? new Uint8Array());

/** Without the results that are stored beside formulas, so that whoever opens it computes every cell. */
function withoutResults(bytes: Uint8Array): Uint8Array {
  const parts = unzipSync(bytes);
  for (const [name, part] of Object.entries(parts))
    if (/worksheets\/sheet\d+\.xml$/.test(name)) parts[name] = strToU8(decode(part).replace(/(<f(?:\s[^>]*)?(?:\/>|>[^<]*<\/f>))<v>[^<]*<\/v>/g, "$1"));
  return zipSync(parts);
}

/** A cell that is formatted as a share is shown as one. */
const numberIn = (shown: string): number => (shown.endsWith("%") ? Number(shown.slice(0, -1)) / 100 : Number(shown));

for (const [name, build] of Object.entries(books))
  describe(`a shared copy of ${name}`, () => {
    let before = new Uint8Array();
    let shared: Awaited<ReturnType<typeof share>>;
    beforeAll(async () => {
      before = new Uint8Array(await build());
      shared = await share(openXlsx(before));
    });

    it("holds no formula of ours, and every value as it was", () => {
      const [was, is] = [cellsOf(before), cellsOf(shared.bytes)];
      expect([...is.values()].filter(({ formula }) => formula?.includes("LOT."))).toEqual([]);
      expect(shared.cells.length).toBeGreaterThan(3);
      for (const [place, cell] of was) expect([place, is.get(place)?.value, is.get(place)?.style]).toEqual([place, cell.value, cell.style]);
      expect(decode(shared.bytes)).not.toContain("_xldudf_");
    });

    it("differs in nothing but those cells, their sheet of workings and the lists of sheets", () => {
      const [was, is] = [unzipSync(before), unzipSync(shared.bytes)];
      const changed = Object.keys(was).filter((part) => decode(was[part]) !== decode(is[part]));
      const allowed = /worksheets\/sheet\d+\.xml$|xl\/workbook\.xml$|workbook\.xml\.rels$|\[Content_Types\]\.xml$|calcChain\.xml$|styles\.xml$/;
      expect(changed.filter((part) => !allowed.test(part))).toEqual([]);
      const kept = Object.keys(was).filter((part) => /chart|drawing|media|comments|vml|theme|table|pivot/.test(part));
      if (name !== "the sample") expect(kept.length).toBeGreaterThan(3);
      for (const part of kept) expect([part, Buffer.compare(was[part] ?? new Uint8Array(), is[part] ?? new Uint8Array())]).toEqual([part, 0]);
    });

    it("becomes the same formulas again when it is put back", () => {
      const back = unshare(openXlsx(shared.bytes));
      expect(back.kept).toEqual([]);
      expect([...cellsOf(back.bytes)]).toEqual([...cellsOf(before)]);
    });

    it("is the same copy when it is shared twice", async () => {
      const again = await share(openXlsx(shared.bytes));
      expect(again.cells).toEqual([]);
    });

    it("holds values alone where that was asked", async () => {
      const { bytes, cells } = await share(openXlsx(before), { valuesOnly: true });
      expect(cells.every(({ now }) => now === null)).toBe(true);
      const is = cellsOf(bytes);
      for (const { sheet: on, cell, value } of cells) expect([is.get(`${on}!${cell}`)?.formula ?? null, is.get(`${on}!${cell}`)?.value ?? ""]).toEqual([null, value ?? ""]);
      expect([...cellsOf(unshare(openXlsx(bytes)).bytes)]).toEqual([...cellsOf(before)]);
    });

    outside("soffice", "computed anew by LibreOffice", (soffice) => {
      it("shows the same values, and no name that it does not know", () => {
        const sheets = shownBy(soffice, withoutResults(shared.bytes));
        const held = openXlsx(shared.bytes);
        let compared = 0;
        for (const { sheet: on, cell, value, error, now } of shared.cells) {
          const { row, column } = [...held.cells(on)].find(({ address }) => address === cell) ?? { row: 0, column: 0 };
          const shown = sheets.get(on)?.[row - 1]?.[column - 1] ?? "";
          expect(shown, `${on}!${cell}`).not.toMatch(/#NAME\?/);
          if (error || now === null) continue;
          if (typeof value === "number") expect(Math.abs(numberIn(shown) - value), `${on}!${cell} shows ${shown} for ${value}`).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(value)));
          else expect(shown, `${on}!${cell}`).toBe(String(value ?? ""));
          compared++;
        }
        expect(compared).toBeGreaterThan(3);
      }, 60_000);

      it("is put back whole after LibreOffice saved it", () => {
        const saved = convertedTo(soffice, "copy.xlsx", shared.bytes, "xlsx");
        const { restored, kept } = unshare(openXlsx(saved));
        expect(kept).toEqual([]);
        expect(restored.length).toBe(shared.cells.filter(({ was }) => typeof was === "string").length);
      }, 60_000);
    });
  });

describe("a copy that the bookkeeper changed", () => {
  it("keeps a changed twin and lists it, and takes a changed number along", async () => {
    const { bytes } = await share(openXlsx(sample));
    const before = cellsOf(sample);
    const [edited, input] = ["K5", "G6"];
    const changed = openXlsx(bytes).patch([
      { sheet: "Lots", cell: edited, formula: "=5+1", value: 6 },
      { sheet: "Lots", cell: input, formula: null, value: 20 },
    ]);
    const { bytes: back, kept, restored } = unshare(openXlsx(changed));
    expect(kept).toEqual([{ place: "Lots!K5", was: before.get("Lots!K5")?.formula, now: "=5+1", sentence: "what stands there was changed" }]);
    const after = cellsOf(back);
    expect(after.get("Lots!K5")?.formula).toBe("=5+1");
    expect(after.get("Lots!G6")?.value).toBe(20);
    expect(after.get("Lots!K6")?.formula).toBe(before.get("Lots!K6")?.formula);
    expect(restored.length).toBeGreaterThan(40);
  });

  const inserted = (formula: string): Uint8Array => {
    const text = (cell: string, content: string): string => `<c r="${cell}" t="inlineStr"><is><t xml:space="preserve">${content}</t></is></c>`;
    const workings = `<row r="1">${text("A1", "Workings of Lotwright")}</row><row r="6">${text("A6", "Lots!B2")}${text("C6", '=LOT.COPPER(A2,"g")')}${text("D6", "=A2*0.3")}<c r="E6"><f>Lots!B3</f><v>3</v></c></row>`;
    return handmade({ sheets: { Lots: sheet(`<row r="3"><c r="A3"><v>10</v></c><c r="B3"><f>${formula}</f><v>3</v></c></row>`), Workings: sheet(workings) } });
  };
  it("finds a cell that moved since a row was inserted above it", () => {
    const { bytes, restored } = unshare(openXlsx(inserted("A3*0.3")));
    expect(restored).toEqual(["Lots!B3"]);
    expect(cellsOf(bytes).get("Lots!B3")).toMatchObject({ formula: '=LOT.COPPER(A3,"g")', value: 3 });
    expect(openXlsx(bytes).sheets.map(({ name }) => name)).toEqual(["Lots"]);
  });
  it("leaves a cell whose formula reads another row than it moved to", () => {
    expect(unshare(openXlsx(inserted("A9*0.3"))).kept).toMatchObject([{ place: "Lots!B3", now: "=A9*0.3" }]);
  });
  it("is refused in a sentence where it is no copy of ours", () => {
    expect(() => unshare(openXlsx(sample))).toThrow(/no sheet of workings/);
  });
});

describe("the add-in's own part in a file", () => {
  const panes = (ids: readonly string[]): string => `<wetp:taskpanes xmlns:wetp="w" xmlns:r="r">${ids.map((id) => `<wetp:taskpane dockstate="right" visibility="1"><wetp:webextensionref r:id="${id}"/></wetp:taskpane>`).join("")}</wetp:taskpanes>`;
  const extension = (inside: string): string => `<we:webextension xmlns:we="we" id="{A}"><we:reference id="x" version="1.0"/>${inside}</we:webextension>`;
  const rels = (...links: (readonly [string, string])[]): string => relationships(links);
  const book = (others: boolean): Uint8Array =>
    handmade({
      sheets: { Lots: sheet('<row r="1"><c r="A1"><f>_xldudf_LOT_COPPER(10,"g")</f><v>2.94553909307999</v></c></row>') },
      parts: {
        "_rels/.rels": rels(["officeDocument", "xl/workbook.xml"], ["webextensiontaskpanes", "xl/webextensions/taskpanes.xml"]),
        "xl/webextensions/taskpanes.xml": panes(others ? ["rId1", "rId2"] : ["rId1"]),
        "xl/webextensions/_rels/taskpanes.xml.rels": others ? rels(["webextension", "webextension1.xml"], ["webextension", "webextension2.xml"]) : rels(["webextension", "webextension1.xml"]),
        "xl/webextensions/webextension1.xml": extension("<we:customFunctionIds>_xldudf_LOT_COPPER</we:customFunctionIds>"),
        ...(others ? { "xl/webextensions/webextension2.xml": extension("") } : {}),
      },
    });
  it("is known by the id that the manifest has", () => {
    expect(readFileSync(new URL("../../manifest/manifest.xml", import.meta.url), "utf8")).toContain(`<Id>${ADD_IN_ID}</Id>`);
  });
  it("is taken out with all that points at it", async () => {
    const { bytes } = await share(openXlsx(book(false)));
    expect(Object.keys(unzipSync(bytes)).filter((part) => part.includes("webextension"))).toEqual([]);
    expect(decode(unzipSync(bytes)["_rels/.rels"])).not.toContain("taskpanes");
  });
  it("goes alone where another add-in has its part there", async () => {
    const { bytes } = await share(openXlsx(book(true)));
    const parts = unzipSync(bytes);
    expect(Object.keys(parts).filter((part) => part.includes("webextension")).sort()).toEqual(["xl/webextensions/_rels/taskpanes.xml.rels", "xl/webextensions/taskpanes.xml", "xl/webextensions/webextension2.xml"]);
    expect(decode(parts["xl/webextensions/taskpanes.xml"])).toBe(panes(["rId2"]));
  });
});

it("a name and a rule with a formula of ours are named, since they cannot be changed", async () => {
  const rules = '<conditionalFormatting sqref="A1"><cfRule type="expression" priority="1"><formula>_xldudf_LOT_COPPER(A1,"g")&gt;1</formula></cfRule></conditionalFormatting>';
  const book = handmade({ sheets: { Lots: sheet('<row r="1"><c r="A1"><v>1</v></c></row>').replace("</worksheet>", `${rules}</worksheet>`) }, workbookTail: '<definedNames><definedName name="Need">_xldudf_LOT_COPPER(Lots!$A$1,"g")</definedName></definedNames>' });
  const { left } = await share(openXlsx(book));
  expect(left).toHaveLength(2);
  expect(left[0]).toMatch(/^The name Need/);
  expect(left[1]).toMatch(/on the sheet Lots/);
});

