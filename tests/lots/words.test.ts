import { describe, expect, it } from "vitest";
import { readHeading } from "../../src/lots/words";

const measure = (text: string): string => {
  const { words, measure } = readHeading(text);
  return `${words.join(" ")} | ${measure === null ? "-" : `${measure.kind} ${measure.unit ?? "?"}`}`;
};

describe("a heading", () => {
  it.each([
    ["Net (g)", "net | mass g"],
    ["Net, g", "net | mass g"],
    ["Net wt lbs.", "net wt | mass lb"],
    ["Gross [kg]", "gross | mass kg"],
    ["Gross, in unit", "gross | by unit column ?"],
    ["Fine oz t", "fine | mass ozt"],
    ["Fine, troy ounces", "fine | mass ozt"],
    ["ozt fine", "fine | mass ozt"],
    ["Wt (oz)", "wt | mass ?"],
    ["Poids (gr.)", "poids | mass ?"],
    ["Poids (onces)", "poids | mass ?"],
    ["Poids (onces troy)", "poids | mass ozt"],
    ["Gr wt", "gr wt | -"],
    ["Price (£/kg)", "price | per mass kg"],
    ["Price $ per lb", "price | per mass lb"],
    ["Price per oz", "price | per mass ?"],
    ["Prix ($/once troy)", "prix | per mass ozt"],
    ["R/C ($/ozt)", "rc | per mass ozt"],
    ["Fees ($)", "fees | money ?"],
    ["Weights (g) Tare (kg)", "weights tare | mass kg"],
    ["Terms ($) Payable %", "terms payable | percent %"],
    ["% payable", "payable | percent %"],
    ["Titre (‰)", "titre | per thousand ppt"],
    ["Karat", "karat | karat karat"],
    ["Acid, L", "acid | volume L"],
    ["N° de lot", "no lot | -"],
    ["Lot #", "lot no | -"],
    ["Unit", "unit | -"],
    ["Rec'd", "recd | -"],
    ["Frais d’affinage", "frais affinage | -"],
  ])("%s is read as %s", (text, read) => {
    expect(measure(text)).toBe(read);
  });
});
