import type { NewSheet, SheetCell } from "../workbook/port";
import { literalText } from "../functions/reader";
import { DAY_FORMAT, decimalsOf, moneyFormat, percentFormat, plainFormat } from "./number-format";
import type { PerMass, QuoteInput, Written } from "./quote";
import { type ReadTerms, quoteFigures, readTerms } from "./quote-figures";
import { SheetRows } from "./sheet-rows";
import { textLines } from "./text-lines";

/** The sheet that a client gets; throws an OfferFault where something cannot be reckoned with. */
export function quoteSheet(input: QuoteInput, name: string): NewSheet {
  // Its values are the sheet's own formulas'; here it is only seen whether they have any.
  const { down, quoted, up } = quoteFigures(input);
  const sheet = new Sheet(input, readTerms(input), decimalsOf([down.price, quoted.price, up.price], 2, 4));
  const { rows } = sheet;
  sheet.head();
  sheet.offered();
  const goods = sheet.assumed();
  const terms = sheet.terms(goods);
  const lines = sheet.asQuoted(goods, terms);
  if (input.payment !== "metal") sheet.moved("Payout, if the price moves", terms, (column, price) => payoutOf(goods, terms, column, price), sheet.money);
  if (input.payment !== "money") sheet.moved(`${input.payment === "metal" ? "In" : "Or in"} metal, ${input.metalUnit} of fine metal`, terms, (column, price) => metalOf(goods, terms, lines, column, price, input.metalUnit), METAL_FORMATS[input.metalUnit] ?? plainFormat(3));
  const pictures = input.picture ? [{ ...input.picture, sheet: name, at: sheet.picture(input.picture.height) }] : [];
  sheet.foot(goods, lines);
  return {
    newSheet: name,
    columnWidths: COLUMNS.map(([, width]) => width),
    cells: rows.cells,
    print: { area: `A1:E${rows.row}`, orientation: "portrait", fitsOnePage: true, ...(input.shop.paper ? { paper: input.shop.paper } : {}) },
    pictures,
  };
}

/** Together as wide as the paper is when a quote of usual length fills its height. */
const COLUMNS = [["A", 34], ["B", 16], ["C", 18], ["D", 18], ["E", 18]] as const;
const CASES = ["C", "D", "E"] as const;
type Case = (typeof CASES)[number];
/** In digits: what fits as a title, and text that flows over from A into C, from B into E and from A into E. */
const [TITLE_LINE, LEFT_LINE, RIGHT_LINE, WHOLE_LINE] = [44, 66, 68, 102] as const;
const METAL_FORMATS: Readonly<Record<string, string>> = { g: plainFormat(2), kg: plainFormat(5) };
/** Rows of a sheet of ours are as high as the spreadsheet's own text asks for. */
const ROW_PIXELS = 20;

/** The rows in which the reckoning finds what it needs. */
interface Goods {
  readonly weight: string;
  readonly unit: string;
  readonly written: number;
  readonly perThousand: number;
  readonly fine: number;
}
interface Terms {
  /** Per troy ounce. */
  readonly price: string;
  readonly swing: string;
  readonly refiningCharge: string;
  readonly charges: string;
  readonly share: (column: Case) => string;
}
interface Lines {
  readonly payable: number;
  readonly charges: number;
  readonly payout: number;
}

/** Keeps words off the number at their left. */
const APART = "\u2002";

const fixed = (cell: string): string => cell.replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");

const payoutOf = ({ fine }: Goods, { share, refiningCharge, charges }: Terms, column: Case, price: string): string =>
  `=LOT.PAYOUT(${column}$${fine},"ozt",${price},${share(column)},${refiningCharge},${charges})`;

/** Where the charges leave no metal, the function refuses, and a client's paper says "none". */
const metalOf = ({ fine }: Goods, { share }: Terms, lines: Lines, column: Case, price: string, unit: string): string => {
  const charges = `${column}$${lines.charges}`;
  return `=IF(ROUND(${column}$${lines.payable}*${price}-${charges},2)<=0,"none",LOT.METALRETURN(${column}$${fine},"ozt",${share(column)},${charges},${price},${literalText(unit)}))`;
};

class Sheet {
  readonly rows = new SheetRows(COLUMNS.map(([column]) => column));
  readonly money: string;
  readonly #price: string;
  /** Parts of the input as they are written into cells. */
  readonly #read: ReadTerms;

  constructor(
    readonly input: QuoteInput,
    read: ReadTerms,
    priceDecimals: number,
  ) {
    this.#read = read;
    this.money = moneyFormat(input.shop.currency);
    this.#price = moneyFormat(input.shop.currency, priceDecimals);
  }

  head(): void {
    const { rows, input: { shop, number, date, days } } = this;
    const [first = "", ...more] = textLines(shop.name ?? "", TITLE_LINE);
    if (first !== "") rows.text("A", first, { look: "title" });
    rows.text("E", "Quote", { look: "title", align: "right" });
    rows.next();
    const left = [...more, ...textLines(shop.address ?? "", LEFT_LINE)];
    const facts: readonly ((row: number) => [string, SheetCell["content"], Omit<SheetCell, "cell" | "content">])[] = [
      () => ["Quote number", number, typeof number === "string" ? { asText: true } : {}],
      () => ["Date", date, { look: "input", numberFormat: DAY_FORMAT }],
      () => ["Days that it holds", days, { look: "input" }],
      (row) => ["Valid until", `=E${row - 2}+E${row - 1}`, { numberFormat: DAY_FORMAT, look: "total" }],
    ];
    for (let i = 0; i < Math.max(left.length, facts.length); i++) {
      const line = left[i];
      if (line !== undefined) rows.text("A", line);
      const fact = facts[i]?.(rows.row);
      if (fact) {
        const [label, content, how] = fact;
        rows.text("D", label, { look: "label" });
        rows.put("E", content, { align: "right", ...how });
      }
      rows.next();
    }
    rows.next();
  }

  offered(): void {
    const { rows, input: { client, lot, goods } } = this;
    rows.heading("Offered");
    this.#lines("Client", textLines(client ?? "", RIGHT_LINE));
    if (lot !== undefined) {
      this.#label("Lot");
      rows.put("B", lot, { align: "left", ...(typeof lot === "string" ? { asText: true } : {}) });
      rows.next();
    }
    this.#lines("Goods", textLines(goods ?? "", RIGHT_LINE));
  }

  assumed(): Goods {
    const { rows, input: { weight, low, likely, high, basis } } = this;
    this.#label("Net weight");
    const [value, unit] = [rows.put("B", weight.value, { look: "input", numberFormat: plainFormat(decimalsOf([weight.value], 0, 4)) }), rows.text("C", weight.unit, { look: "input", align: "left" })];
    rows.next(2);
    rows.heading("Assumed of the metal", "", "Low", "Likely", "High");
    const written = rows.row;
    this.#label("Fineness");
    [low, likely, high].forEach((fineness, i) => this.#written(CASES[i] ?? "C", fineness));
    rows.next();
    const perThousand = this.#row("Fineness, ‰", plainFormat(1), (column) => `=LOT.FINENESS(${column}${written})`);
    const fine = this.#row("Fine weight, ozt", plainFormat(3), (column) => `=LOT.FINEWEIGHT(${fixed(value)},${fixed(unit)},${column}${written})`);
    this.#lines("Fineness known from", textLines(basis ?? "", RIGHT_LINE));
    rows.next();
    return { weight: fixed(value), unit: fixed(unit), written, perThousand, fine };
  }

  terms({ weight, unit, written }: Goods): Terms {
    const { rows, input: { terms, priceFrom, payment } } = this;
    rows.heading("Terms");
    let price = this.#rate("Price", terms.price, priceFrom === undefined ? "" : `, as ${priceFrom} showed it when this was made`, this.#rateFormat(terms.price));
    if (terms.price.unit !== "ozt") price = this.#term("Price per troy ounce", `=LOT.PRICE(${price},${literalText(terms.price.unit)},"ozt")`, this.#price, "");
    const swing = this.#term("Price may go down or up by", this.#read.swing.toNumber(), percentFormat(this.#read.swing.toNumber()), "");
    const payable = this.#term("Payable", this.#read.payable, percentFormat(this.#read.payable), "of the fine weight");
    let refiningCharge = this.#rate("Refining charge", terms.refiningCharge ?? { value: 0, unit: "ozt" }, " of payable fine weight", this.#rateFormat(terms.refiningCharge));
    const refiningUnit = terms.refiningCharge?.unit ?? "ozt";
    if (refiningUnit !== "ozt") refiningCharge = this.#term("Refining charge per troy ounce", `=LOT.PRICE(${refiningCharge},${literalText(refiningUnit)},"ozt")`, moneyFormat(this.input.shop.currency, 4), "");
    const treatment = terms.treatmentCharge && this.#rate("Treatment charge", terms.treatmentCharge, " of net weight", this.#rateFormat(terms.treatmentCharge));
    let charges = this.#term("Lot charges", this.#read.lotCharges, this.money, "for the lot as a whole");
    if (treatment !== undefined)
      charges = this.#term("Treatment and lot charges together", `=${charges}+${treatment}*LOT.WEIGHT(${weight},${unit},${literalText(terms.treatmentCharge?.unit ?? "")})`, this.money, "");
    const deduction = this.#read.deduction === 0 ? null : this.#term("Least deduction", this.#read.deduction, `${plainFormat(decimalsOf([this.#read.deduction], 0, 3))}" ‰"`, "of the fineness, where that takes more");
    this.#lines("Payment", [PAYMENTS[payment]]);
    rows.next();
    const share = (column: Case): string => (deduction === null ? payable : `MAX(0,MIN(${payable},1-${deduction}/1000/LOT.FINENESS(${column}$${written},"fraction")))`);
    return { price, swing, refiningCharge, charges, share };
  }

  asQuoted(goods: Goods, terms: Terms): Lines {
    const { rows } = this;
    rows.heading("At the price as quoted", "", "Low", "Likely", "High");
    const payable = this.#row("Payable fine weight, ozt", plainFormat(3), (column) => `=ROUND(${column}${goods.fine}*${terms.share(column)},9)`);
    const value = this.#row("Its value", this.money, (column) => `=LOT.PAYOUT(${column}${goods.fine},"ozt",${terms.price},${terms.share(column)})`);
    const charges = this.#row("Charges", this.money, (column) => `=ROUND(${column}${value}-${column}${value + 2},2)`);
    const payout = this.#row(this.input.payment === "metal" ? "What is left, returned as metal" : "Payout", this.money, (column) => payoutOf(goods, terms, column, terms.price), "total");
    rows.next();
    return { payable, charges, payout };
  }

  /** Three rows, for the price down, as quoted and up. */
  moved(title: string, { price, swing }: Terms, formula: (column: Case, price: string) => string, format: string): void {
    const { rows } = this;
    rows.heading(title, "Price per ozt", "Low", "Likely", "High");
    const prices = [["With the price down", `=ROUND(${price}*(1-${swing}),8)`], ["With the price as quoted", `=${price}`], ["With the price up", `=ROUND(${price}*(1+${swing}),8)`]] as const;
    for (const [label, of] of prices) {
      this.#label(label);
      const at = rows.put("B", of, { numberFormat: this.#price });
      for (const column of CASES) rows.put(column, formula(column, `$${at}`), { numberFormat: format, align: "right" });
      rows.next();
    }
    rows.next();
  }

  /** Leaves room for a picture so high; gives the cell under its corner. */
  picture(height: number): string {
    const at = `A${this.rows.row}`;
    this.rows.next(Math.ceil(height / ROW_PIXELS) + 1);
    return at;
  }

  foot({ perThousand }: Goods, { payout }: Lines): void {
    const { rows } = this;
    if (this.input.picture) {
      rows.text("A", "The picture shows the range as it was on the day of the quote.", { look: "note" });
      rows.next(2);
    }
    rows.heading("Melt and assay decide");
    for (const sentence of [...textLines(DECIDES, WHOLE_LINE), HOLDS]) {
      rows.text("A", sentence);
      rows.next();
    }
    const [c, d, e] = CASES.map((column) => `${column}${perThousand}`);
    rows.put("A", `=IF(OR(${c}>${d},${d}>${e}),${literalText(DISORDER)},IF(MIN(C${payout}:E${payout})<0,${literalText(OWED)},""))`, { look: "note" });
  }

  #label(text: string): void {
    this.rows.text("A", text, { look: "label" });
  }

  /** A label with lines of text beside it; nothing where there are none. */
  #lines(label: string, lines: readonly string[]): void {
    lines.forEach((line, i) => {
      if (i === 0) this.#label(label);
      this.rows.text("B", line);
      this.rows.next();
    });
  }

  #written(column: Case, fineness: Written): void {
    this.rows.put(column, fineness, { look: "input", align: "right", ...(typeof fineness === "string" ? { asText: true } : {}) });
  }

  #row(label: string, numberFormat: string, formula: (column: Case) => string, look?: "total"): number {
    const { row } = this.rows;
    this.rows.text("A", label, { look: look ?? "label" });
    if (look) this.rows.text("B", "", { look });
    for (const column of CASES) this.rows.put(column, formula(column), { numberFormat, ...(look ? { look } : {}) });
    this.rows.next();
    return row;
  }

  /** A number that is told is an input; a formula is not. */
  #term(label: string, content: number | string, numberFormat: string, words: string): string {
    this.#label(label);
    const cell = this.rows.put("B", content, { numberFormat, ...(typeof content === "number" ? { look: "input" as const } : {}) });
    if (words !== "") this.rows.text("C", `${APART}${words}`);
    this.rows.next();
    return fixed(cell);
  }

  #rate(label: string, { value, unit }: PerMass, of: string, numberFormat: string): string {
    return this.#term(label, value, numberFormat, `per ${unit}${of}`);
  }

  #rateFormat(given: PerMass | undefined): string {
    return moneyFormat(this.input.shop.currency, decimalsOf([given?.value ?? 0], 2, 4));
  }
}

const PAYMENTS = {
  money: "In money",
  metal: "In metal",
  either: "In money or in metal, as the client chooses",
} as const;

const DISORDER = "The low, the likely and the high fineness are not in that order: mend them.";
const OWED = "A payout below zero is owed by the client: the charges are more than the metal.";
const DECIDES =
  "This quote is reckoned from the weight and the fineness assumed above; what is paid is reckoned from the weight and the fineness that melting and sampling find, at these terms.";
const HOLDS = "The terms hold until the day named above; after it, ask for a new quote.";
