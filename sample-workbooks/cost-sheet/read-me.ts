import { _, blank, caution, heading, input, inputWord, note, section, type Sheet, text, title, unitHeading } from "../write/book";
import { cautionOf, release } from "./told";

const words = (sentence: string) => text(sentence, "words");

export const readMe: Sheet = {
  name: "Read me",
  widths: [32, 14, 16, 84],
  page: "landscape",
  cursor: "C4",
  merged: [11, 12, 13, 14, 15, 17, 18, 19, 20, 21].map((row) => `B${row}:D${row}`),
  heights: { 1: 28, 3: 26, 4: 33, 5: 33, 6: 33, 7: 33 },
  rows: {
    1: [title("Quillmere Silver: cost sheet for March 2026")],
    2: [note("An invented shop of two people who refine silver for others. Its lots, clients and prices are invented too: change whatever you like.")],
    3: [section("Try it here")],
    4: [text("Fine silver in solution, lb"), input(10, "weight"), blank("typeHere"), words('1.  Type =LOT.COPPER(B4,"lb") in the dashed cell: the copper, in pounds, that drops this silver.')],
    5: [_, _, blank("typeHere"), words('2.  A wrong unit, on purpose: =LOT.COPPER(B4,"oz"). The cell shows an error, and its message says what to write instead.')],
    6: [_, _, blank("typeHere"), words('3.  =LOT.COPPERBARS(C4,"lb",2,"lb","15%"): how many two-pound bars to hang when each leaves a stub of 15 %.')],
    7: [text("Sterling, g"), input(7500, "weight"), blank("typeHere"), words('4.  =LOT.FINEWEIGHT(B7,"g","sterling"): its fine weight in troy ounces. Then write 92.5 in place of "sterling": it asks which scale is meant.')],
    9: [caution(cautionOf("COPPER"))],

    11: [heading("Sheet"), unitHeading("What is on it"), blank("heading"), blank("heading")],
    12: [text("Lots"), words("Each lot from weigh-in to payout, and the metal balance of the month.")],
    13: [text("Consumables"), words("What the month used up and wore down, per troy ounce of silver.")],
    14: [text("Settlement"), words("One lot settled by exchange of assays: one formula writes the statement, ordinary ones stand beside it.")],
    15: [text("Prices"), words("Prices and terms. Their cells have names, so that a formula can be read: SilverPrice, CopperAllowance.")],

    17: [heading("How a cell looks"), unitHeading("What it is"), blank("heading"), blank("heading")],
    18: [inputWord("Green ground"), words("Typed in: change it, and what depends on it follows.")],
    19: [text("No ground"), words("Computed, a constant or a label.")],
    20: [blank("typeHere"), words("Left free for you.")],
    21: [text("Red-brown words", "caution"), words("A caution that belongs to the figures near it.")],

    23: [note("Where Lotwright is not installed, a spreadsheet shows the figures that are stored in this file. A cell with LOT in its formula reads #NAME? there once it is computed again.")],
    24: [note(`Written by ${release()}. =LOT.VERSION() in any cell says which release computes here.`)],
  },
};
