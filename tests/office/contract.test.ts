import type { Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import type { BookPort, Change, NewSheet, Picture } from "../../src/workbook/port";
import { QUOTE, contract } from "../workbook/contract";
import { BOOK } from "../workbook/contract-book";
import { type PortPage, openPortPage } from "./port-page";

let opened: PortPage;
beforeAll(async () => {
  opened = await openPortPage();
});
afterAll(() => opened?.close());

/** The faults of the page come out with the page's own words around them. */
const asked = async <T>(answer: Promise<T>): Promise<T> =>
  answer.catch((error: Error) => {
    throw new Error(/Error: ([^]*?)(?:\n {4}at |$)/.exec(error.message)?.[1] ?? error.message);
  });

/** Bytes do not cross into the page, numbers do. */
const withNumbers = (change: Change): unknown => {
  const picture = (one: Picture): unknown => ({ ...one, png: [...one.png] });
  if ("png" in change) return picture(change);
  return "newSheet" in change ? { ...change, ...(change.pictures ? { pictures: change.pictures.map(picture) } : {}) } : change;
};

function portIn(page: Page): BookPort {
  return {
    selection: () => asked(page.evaluate(() => window.port.selection())),
    onSelection: () => () => undefined,
    sheets: () => asked(page.evaluate(() => window.port.sheets())),
    names: () => asked(page.evaluate(() => window.port.names())),
    read: (place) => asked(page.evaluate((at) => window.port.read(at), place)),
    note: (at) => asked(page.evaluate((one) => window.port.note(one), at)),
    select: (place) => asked(page.evaluate((at) => window.port.select(at), place)),
    recalculate: () => asked(page.evaluate(() => window.port.recalculate())),
    async write(changes) {
      const number = await asked(
        page.evaluate(async (all) => {
          const bytes = (picture: Picture): Picture => ({ ...picture, png: new Uint8Array(picture.png) });
          const given = (all as (Picture | NewSheet)[]).map((change) => ("png" in change ? bytes(change) : "pictures" in change && change.pictures ? { ...change, pictures: change.pictures.map(bytes) } : change));
          return window.undos.push(await window.port.write(given)) - 1;
        }, changes.map(withNumbers)),
      );
      return { undo: () => asked(page.evaluate((n) => window.undos[n]?.undo(), number)) };
    },
  };
}

contract(
  "Excel",
  async () => {
    const { page } = opened;
    const book = {
      sheets: BOOK,
      selected: ["Lots", "A1"] as const,
      facts: { Lots: { hiddenColumns: ["C"], merged: ["A9:C9"] }, Prices: { tables: [{ name: "Assumed", range: "A1:B3", hasTotals: true }] }, Stock: { merged: ["A6:C6"], tables: [{ name: "Bars", range: "A1:C3", hasTotals: false }, { name: "Spare", range: "F1:G2", hasTotals: false }] } },
      looks: { "range:Lots!A3.Format.Font.Bold": true, "range:Lots!B3.Format.Fill.Color": "#EEDDCC", "range:Lots!B3.Format.Fill.Pattern": "Solid", "range:Lots!A4.Format.Font.Italic": true, "range:Lots!D4.Format.Borders[EdgeTop].Style": "Double" },
      names: { GrossWeights: "Lots!$B$2:$B$3", SilverPrice: "Prices!$B$2" },
    };
    await page.evaluate((one) => window.stub.open(one), book);
    return {
      port: portIn(page),
      state: () => page.evaluate(() => window.stub.state()),
      failAt: (n) => page.evaluate((one) => window.stub.failAt(one), n),
    };
  },
  { refused: "=REFUSED(1)", computes: false },
);

it("dresses a new sheet in Excel as it is to be: widths in points, looks, one page, the picture at its cell with its alternative text", async () => {
  const { page } = opened;
  await page.evaluate((sheets) => window.stub.open({ sheets, selected: ["Lots", "A1"] }), BOOK);
  await portIn(page).write([QUOTE]);
  const { properties, merged, pictures } = (await page.evaluate(() => window.stub.state())) as { properties: [string, unknown][]; merged: unknown; pictures: Record<string, string> };
  const [shape = ""] = Object.keys(pictures);
  const at = "range:Quote Q-001!";
  expect(new Map(properties.filter(([path]) => !path.startsWith("chart:")))).toEqual(
    new Map<string, unknown>([
      [`${at}A1.Format.ColumnWidth`, 129.75],
      [`${at}A1.Format.Font.Bold`, true],
      [`${at}A1.Format.RowHeight`, 24],
      [`${at}A1.Format.Font.Size`, 16],
      [`${at}A2.Format.Font.Color`, "#4A5358"],
      [`${at}A3.Format.Borders[EdgeBottom].Color`, "#9AA3A8"],
      [`${at}A3.Format.Borders[EdgeBottom].Style`, "Continuous"],
      [`${at}A3.Format.Borders[EdgeLeft].Color`, "#9AA3A8"],
      [`${at}A3.Format.Borders[EdgeLeft].Style`, "Continuous"],
      [`${at}A3.Format.Borders[EdgeRight].Color`, "#9AA3A8"],
      [`${at}A3.Format.Borders[EdgeRight].Style`, "Continuous"],
      [`${at}A3.Format.Borders[EdgeTop].Color`, "#9AA3A8"],
      [`${at}A3.Format.Borders[EdgeTop].Style`, "Continuous"],
      [`${at}A3.Format.Fill.Color`, "#FBF7E4"],
      [`${at}A3.Format.VerticalAlignment`, "Top"],
      [`${at}A3.Format.WrapText`, true],
      [`${at}A5.Format.Fill.Color`, "#FCEEE3"],
      [`${at}A5.Format.Font.Bold`, true],
      [`${at}A5.Format.Font.Color`, "#7A2E0E"],
      [`${at}A5.Format.RowHeight`, 45],
      [`${at}A5.Format.VerticalAlignment`, "Top"],
      [`${at}A5.Format.WrapText`, true],
      [`${at}B1.Format.ColumnWidth`, 66.75],
      [`${at}B2.Format.Borders[EdgeTop].Color`, "#9AA3A8"],
      [`${at}B2.Format.Borders[EdgeTop].Style`, "Continuous"],
      [`${at}B2.Format.Font.Bold`, true],
      [`${at}B3.Format.HorizontalAlignment`, "Right"],
      [`${shape}.AltTextDescription`, "The range of the payout"],
      [`${shape}.Height`, 15],
      [`${shape}.Left`, 0],
      [`${shape}.LockAspectRatio`, false],
      [`${shape}.Top`, 90],
      [`${shape}.Width`, 30],
      ["sheet:Quote Q-001.PageLayout.Orientation", "Portrait"],
      ["sheet:Quote Q-001.PageLayout.PaperSize", "Letter"],
      ["sheet:Quote Q-001.PageLayout.PrintArea", "A1:B5"],
      ["sheet:Quote Q-001.PageLayout.Zoom", { horizontalFitToPages: 1, verticalFitToPages: 1 }],
      ["sheet:Quote Q-001.Gridlines", false],
    ]),
  );
  expect(merged).toEqual({ "Quote Q-001": ["A1:B1", "A5:B5"] });
});

it("says in a sentence what to do where Excel is too old to enlarge a table, and changes nothing", async () => {
  const { page } = opened;
  const facts = { Stock: { tables: [{ name: "Bars", range: "A1:C3", hasTotals: false }] } };
  await page.evaluate((book) => window.stub.open(book), { sheets: BOOK, facts, selected: ["Lots", "A1"] as const });
  const before = await page.evaluate(() => window.stub.state());
  await page.evaluate(() => {
    const { requirements } = Office.context;
    const isSetSupported = requirements.isSetSupported.bind(requirements);
    requirements.isSetSupported = (set: string, version?: string | number) => Number(String(version).split(".")[1]) < 13 && isSetSupported(set, String(version));
  });
  try {
    await expect(portIn(page).write([{ sheet: "Stock", cell: "A4", content: "S-3" }, { sheet: "Stock", table: "Bars", tableRange: "A1:C4" }])).rejects.toThrow(
      "Cannot enlarge the table Bars: this Excel does not let an add-in do so: select its last cell and press Tab for another row",
    );
    expect(await page.evaluate(() => window.stub.state())).toEqual(before);
  } finally {
    await page.reload();
    await page.evaluate(() => Office.onReady());
  }
});

it("draws a chart of Excel's own over the ranges of the new sheet", async () => {
  const { page } = opened;
  await page.evaluate((sheets) => window.stub.open({ sheets, selected: ["Lots", "A1"] }), BOOK);
  await portIn(page).write([QUOTE]);
  const { properties } = (await page.evaluate(() => window.stub.state())) as { properties: [string, unknown][] };
  const drawn = new Map(properties.flatMap(([path, value]) => (path.startsWith("chart:Quote Q-001|") ? [[path.replace(/^[^.]*\./, ""), value] as const] : [])));
  const range = (cells: string): string => `range:Quote Q-001!${cells}`;
  expect(Object.fromEntries(drawn)).toMatchObject({
    Kind: "LineMarkers",
    "Title.Text": "Fine & share",
    "Legend.Visible": true,
    Position: "D2",
    Width: 225,
    Height: 150,
    "Axes.ValueAxis.NumberFormat": "0.0",
    "Series[0].Name": "Fine",
    "Series[0].Values": range("B2:B3"),
    "Series[0].XAxisValues": range("A2:A3"),
    "Series[1].Name": "Again",
    "Series[1].Values": range("B2:B3"),
    "Series[1].XAxisValues": range("A2:A3"),
  });
});
