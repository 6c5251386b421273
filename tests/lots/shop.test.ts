import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { find } from "../../src/catalogue/catalogue";
import { shopFault } from "../../src/lots/check-shop";
import { type Shop, type ShopValue, readKept, readShop, shopChanges } from "../../src/lots/shop";
import { type ShopField, leftOut, shopFields, shopGroups } from "../../src/lots/shop-fields";
import { readField, typedOf } from "../../src/pane/shop/read-field";
import { openXlsx } from "../../src/workbook/file";
import { FilePort } from "../../src/workbook/file-port";
import { readSettings, settingsChanges } from "../../src/workbook/settings";

const sample = new Uint8Array(readFileSync(new URL("../../sample-workbooks/cost-sheet.xlsx", import.meta.url)));
const fieldOf = (id: ShopField["id"]): ShopField => shopFields.find((field) => field.id === id) as ShopField;
const point = { decimal: ".", separator: ",", column: "," } as const;
const comma = { decimal: ",", separator: ";", column: "\\" } as const;

describe("what is told of the shop", () => {
  it("has each field once", () => {
    expect(new Set(shopFields.map(({ id }) => id)).size).toBe(shopFields.length);
  });

  it("takes every suggestion that it makes", () => {
    const suggesting = shopFields.filter(({ usual }) => usual !== undefined);
    expect(suggesting.length).toBeGreaterThan(5);
    for (const field of suggesting) for (const notation of [point, comma]) {
      const read = readField(field, typedOf(field, { value: field.usual ?? "" }, notation), notation);
      expect([field.id, read]).toEqual([field.id, { value: expect.anything() as unknown }]);
    }
  });

  it("says of every suggestion for the work that it is common practice without a source", () => {
    for (const { id, usual, about, kind } of shopFields) if (usual !== undefined && kind !== "number series") expect([id, about]).toEqual([id, expect.stringContaining("common practice, no source")]);
  });

  it("says what the plan of a lot goes without, until it is told", () => {
    const pails = shopGroups.find(({ title }) => title === "Acid and pails");
    if (!pails) throw new Error("The shop has no group of that title");
    expect(leftOut(pails, new Set(["acidStrength", "fumeHours"]))).toEqual(["pails", "airflow"]);
    expect(leftOut(pails, new Set(["acidStrength", "fumeHours", "airLimit", "pail"]))).toEqual([]);
  });

  it.each<[ShopField["id"], string, RegExp]>([
    ["payable", "98", /^Cannot use payable = 98: could be a share or a percentage: write "98%" or 0\.98$/],
    ["payable", "150%", /from 0 to 1/],
    ["acidStrength", "80%", /from 5% to 70%/],
    ["acidStrength", "68", /could be a share or a percentage/],
    ["pail", "0", /must be a number above 0/],
    ["cellAmps", "-3", /must be a number above 0/],
    ["quoteDays", "2.5", /whole number/],
    ["quoteNumber", "quotes", /needs a number in it/],
    ["deduction", "five", /parts per thousand/],
    ["airSafety", "0.5", /from 1 up/],
    ["name", "=A1", /^$/],
    ["payable", "B4", /on which sheet B4 stands/],
    ["price", "Prices!B5:B6", /name one cell/],
    ["cellVolts", "1,5", /write a point before the decimals/],
    ["deduction", "0.005", /could be a fraction or ‰/],
    ["paper", "A3", /Choose letter or A4/],
  ])("refuses %s = %s in the words of the cell functions", (id, text, says) => {
    const read = readField(fieldOf(id), { text }, point);
    expect(read && "fault" in read ? read.fault : "").toMatch(says);
  });

  it("says the same as the cell function that will read it", () => {
    const said = (id: string, ...cells: unknown[]): string => {
      try {
        find(id)?.call(...cells).value();
        return "";
      } catch (thrown) {
        return (thrown as Error).message;
      }
    };
    expect(shopFault(fieldOf("payable"), { value: 98 })).toBe(said("LOT.PAYOUT", 100, "ozt", 24, 98));
  });

  it.each<[ShopField["id"], ShopValue]>([
    ["name", { value: "=Quillmere" }],
    ["address", { value: "1 Mill Lane\n+1 555 0100" }],
    ["payable", { value: "97.5%" }],
    ["payable", { value: 0.975 }],
    ["price", { sheet: "Old prices", cell: "B5", unit: "lb" }],
    ["pail", { value: 18.9, unit: "L" }],
  ])("stands in its field again as it was kept: %s", (id, told) => {
    for (const notation of [point, comma]) expect(readField(fieldOf(id), typedOf(fieldOf(id), told, notation), notation)).toEqual(told);
  });

  it("is written with the user's own decimals, in the field and in what is said of it", () => {
    expect(typedOf(fieldOf("payable"), { value: "97.5%" }, comma)).toEqual({ text: "97,5%" });
    expect(typedOf(fieldOf("pail"), { value: 18.9, unit: "L" }, comma)).toEqual({ text: "18,9", unit: "L" });
    expect(readField(fieldOf("payable"), { text: "98" }, comma)).toEqual({ fault: 'Cannot use payable = 98: could be a share or a percentage: write "98%" or 0,98' });
    expect(typedOf(fieldOf("address"), { value: "Gate 1.5" }, comma)).toEqual({ text: "Gate 1.5" });
  });

  it("gives back any number that is told, in either notation", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 1e9, noNaN: true }), fc.constantFrom(point, comma), (value, notation) => {
        const told = { value, unit: "lb" };
        expect(readField(fieldOf("copperBar"), typedOf(fieldOf("copperBar"), told, notation), notation)).toEqual(told);
      }),
    );
  });

  it("asks for a unit that it does not know", () => {
    expect(readField(fieldOf("pail"), { text: "5", unit: "" }, point)).toEqual({ fault: "Choose the unit of volume of a pail" });
  });

  it("is kept in the workbook and read again, and is gone byte for byte when it is undone", async () => {
    const port = new FilePort(openXlsx(sample));
    expect(await readShop(port)).toEqual({});
    const shop: Shop = { name: { value: "@Quillmere" }, price: { sheet: "Prices", cell: "B5", unit: "ozt" }, pail: { value: 20, unit: "L" } };
    const { undo } = await port.write(await shopChanges(port, shop));
    const again = new FilePort(openXlsx(port.file.bytes));
    expect(await readShop(again)).toEqual(shop);
    expect(await shopChanges(again, shop)).toEqual([]);
    await undo();
    expect(Buffer.compare(port.file.bytes, sample)).toBe(0);
  });

  it("keeps what a newer release has added, whatever that looks like", async () => {
    const port = new FilePort(openXlsx(sample));
    await port.write(await settingsChanges(port, new Map([["shop", { payable: { value: 1 }, gas: { value: "x" }, odd: 7 }]])));
    expect(await readKept(port)).toEqual({ shop: { payable: { value: 1 } }, isReadable: true });
    await port.write(await shopChanges(port, { name: { value: "Quillmere" } }));
    expect((await readSettings(port)).values.get("shop")).toEqual({ name: { value: "Quillmere" }, gas: { value: "x" }, odd: 7 });
  });

  it.each([
    ["broken text", '{"payable":'],
    ["a text that is no shop", "[1]"],
    ["a field that holds nothing of use", '{"payable":{"price":1},"name":{"value":"Quillmere"}}'],
  ])("says that it cannot be read when somebody left %s, and can be told anew", async (_, text) => {
    const port = new FilePort(openXlsx(sample));
    await port.write(await shopChanges(port, { payable: { value: 1 } }));
    await port.write([{ sheet: "Lotwright", cell: "B2", content: text, asText: true }]);
    expect(await readKept(port)).toMatchObject({ isReadable: false });
    expect((await readShop(port)).payable).toBeUndefined();
    await port.write(await shopChanges(port, { payable: { value: "97%" } }));
    expect(await readKept(port)).toEqual({ shop: { payable: { value: "97%" } }, isReadable: true });
  });

  it("leaves nothing behind where nothing is told any more", async () => {
    const port = new FilePort(openXlsx(sample));
    expect(await shopChanges(port, {})).toEqual([]);
    await port.write(await shopChanges(port, { name: { value: "Quillmere" } }));
    await port.write(await shopChanges(port, {}));
    expect((await readSettings(port)).values.size).toBe(0);
  });
});
