import { literalText } from "../functions/reader";
import type { NewSheet, SheetCell } from "../workbook/port";
import { DAY_FORMAT, decimalsOf, moneyFormat, percentFormat, plainFormat } from "./number-format";
import type { Weight } from "./plausible";
import type { PerMass, Written } from "./quote";
import type { Found, StatementInput } from "./settlement";
import { type SettlementFigures, settlementFigures } from "./settlement-figures";
import { SheetRows } from "./sheet-rows";
import { textLines } from "./text-lines";

export interface Statement {
  readonly sheet: NewSheet;
  /** Where its figures stand, for the lot's own row. */
  readonly cells: { readonly fineness: string; readonly payout: string; readonly recovery: string | null };
}

/** The sheet that a client gets when a lot is settled; throws a SettleFault where something cannot be reckoned with. */
export function statementSheet(input: StatementInput, name: string): Statement {
  const paper = new StatementPaper(input, settlementFigures(input));
  paper.head();
  paper.received();
  const fineness = paper.assays();
  const terms = paper.terms();
  const lines = paper.settlement(fineness, terms);
  const recovery = paper.silver(lines.fine, fineness);
  const pictures = input.picture ? [{ ...input.picture, sheet: name, at: paper.picture(input.picture.height) }] : [];
  paper.foot();
  const { rows } = paper;
  return {
    sheet: {
      newSheet: name,
      columnWidths: COLUMNS.map(([, width]) => width),
      cells: rows.cells,
      print: { area: `A1:E${rows.row}`, orientation: "portrait", fitsOnePage: true, ...(input.shop.paper ? { paper: input.shop.paper } : {}) },
      pictures,
    },
    cells: { fineness, payout: lines.payout, recovery },
  };
}

/** As wide as the paper of a quote. */
const COLUMNS = [["A", 34], ["B", 16], ["C", 18], ["D", 18], ["E", 18]] as const;
const [TITLE_LINE, LEFT_LINE, RIGHT_LINE] = [44, 66, 68] as const;
const ROW_PIXELS = 20;
/** Keeps words off the number at their left. */
const APART = "\u2002";
/** The row of a settlement in which each line stands. */
const LINE = { fine: 3, payable: 4, value: 6, refining: 7, treatment: 8, lot: 9, rounding: 10, payout: 11 } as const;

interface Terms {
  /** Per troy ounce; the treatment charge per unit of the net weight. */
  readonly price: string;
  readonly payable: string;
  readonly refiningCharge: string;
  readonly treatmentCharge: string;
  readonly lotCharges: string;
  readonly deduction: string;
}

const fixed = (cell: string): string => cell.replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");

class StatementPaper {
  readonly rows = new SheetRows(COLUMNS.map(([column]) => column));
  readonly #money: string;
  #weight = "";
  #unit = "";

  constructor(
    readonly input: StatementInput,
    readonly figures: SettlementFigures,
  ) {
    this.#money = moneyFormat(input.shop.currency);
  }

  head(): void {
    const { rows, input: { shop, number, date, lot } } = this;
    const [first = "", ...more] = textLines(shop.name ?? "", TITLE_LINE);
    if (first !== "") rows.text("A", first, { look: "title" });
    rows.text("E", "Statement", { look: "title", align: "right" });
    rows.next();
    const left = [...more, ...textLines(shop.address ?? "", LEFT_LINE)];
    const facts: readonly (readonly [string, SheetCell["content"], Omit<SheetCell, "cell" | "content">])[] = [
      ["Statement number", number, typeof number === "string" ? { asText: true } : {}],
      ["Date", date, { look: "input", numberFormat: DAY_FORMAT }],
      ...(lot === undefined ? [] : ([["Lot", lot, typeof lot === "string" ? { asText: true } : {}]] as const)),
    ];
    for (let i = 0; i < Math.max(left.length, facts.length); i++) {
      const line = left[i];
      if (line !== undefined) rows.text("A", line);
      const fact = facts[i];
      if (fact) {
        rows.text("D", fact[0], { look: "label" });
        rows.put("E", fact[1], { align: "right", ...fact[2] });
      }
      rows.next();
    }
    rows.next();
  }

  received(): void {
    const { rows, input: { client, goods, scale, weight } } = this;
    rows.heading("Received");
    this.#lines("Client", textLines(client ?? "", RIGHT_LINE));
    this.#lines("Goods", textLines(goods ?? "", RIGHT_LINE));
    const decimals = decimalsOf([weight.value, ...(scale ? [scale.gross.value, scale.tare.value] : [])], 0, 4);
    const weighed = (label: string, value: number | string, look: "input" | "total"): string => {
      this.#label(label, look === "total" ? look : "label");
      return rows.put("B", value, { look, numberFormat: plainFormat(decimals) });
    };
    let net: number | string = weight.value;
    if (scale && isDifference(weight, scale, decimals)) {
      const gross = weighed("Gross weight", scale.gross.value, "input");
      rows.text("C", `${APART}${scale.gross.unit}`);
      rows.next();
      const tare = weighed("Tare", scale.tare.value, "input");
      rows.text("C", `${APART}${scale.tare.unit}`);
      rows.next();
      net = `=ROUND(${gross}-${tare},${decimals})`;
    }
    this.#weight = fixed(weighed("Net weight", net, net === weight.value ? "input" : "total"));
    // The formulas read the unit from here; blanks before it do not matter to them.
    this.#unit = fixed(rows.text("C", `${APART}${weight.unit}`));
    rows.next(2);
  }

  /** Gives the cell of the fineness that is settled on, in parts per thousand. */
  assays(): string {
    const { rows, input: { assays: { ours, theirs, limit, umpire } } } = this;
    rows.heading("Assays");
    const one = (label: string, value: Written | undefined): string | null => (value === undefined ? null : this.#written(label, value));
    const [own, other] = [one("Ours", ours), one("The client's", theirs)];
    const apart = own !== null && other !== null ? one("Splitting limit", limit) : null;
    const third = apart === null ? null : one("Umpire's", umpire);
    const formula = own !== null && other !== null ? `=LOT.AGREEDASSAY(${own},${other},${apart ?? ""}${third === null ? "" : `,${third}`})` : `=LOT.FINENESS(${own ?? other ?? ""})`;
    this.#label(own !== null && other !== null ? "Agreed fineness, ‰" : "Fineness, ‰", "total");
    const agreed = rows.put("B", formula, { look: "total", numberFormat: plainFormat(2) });
    rows.next(2);
    return fixed(agreed);
  }

  terms(): Terms {
    const { rows, figures: { terms: read }, input: { terms, weight, priceFrom } } = this;
    rows.heading("Terms");
    const price = this.#rate("Price", terms.price, priceFrom === undefined ? "" : `, as ${priceFrom} showed it`, "ozt");
    const payable = this.#term("Payable", read.payable, percentFormat(read.payable), "of the fine weight");
    const refiningCharge = this.#rate("Refining charge", terms.refiningCharge, " of payable fine weight", "ozt");
    const treatmentCharge = this.#rate("Treatment charge", terms.treatmentCharge, " of net weight", weight.unit);
    const lotCharges = read.lotCharges === 0 ? "0" : this.#term("Lot charges", read.lotCharges, this.#money, "for the lot as a whole");
    const deduction = read.deduction === 0 ? "0" : this.#term("Least deduction", read.deduction, `${plainFormat(decimalsOf([read.deduction], 0, 3))}" ‰"`, "of the fineness, where that takes more");
    rows.next();
    return { price, payable, refiningCharge, treatmentCharge, lotCharges, deduction };
  }

  settlement(fineness: string, terms: Terms): { readonly fine: string; readonly payout: string } {
    const { rows, input } = this;
    const { price, payable, refiningCharge, treatmentCharge, lotCharges, deduction } = terms;
    const call = `LOT.SETTLEMENT(${this.#weight},${this.#unit},${fineness},${price},${payable},${refiningCharge},${treatmentCharge},${lotCharges},${deduction})`;
    const at = (line: keyof typeof LINE): string => `=INDEX(${call},${LINE[line]},2)`;
    rows.heading("Settlement");
    const fine = this.#figure("Fine weight", at("fine"), plainFormat(3), "ozt");
    const payableFine = this.#figure("Payable fine weight", at("payable"), plainFormat(3), "ozt");
    const value = this.#figure("Metal value", at("value"), this.#money, "");
    const charges = ([["Refining charge", "refining", refiningCharge], ["Treatment charge", "treatment", treatmentCharge], ["Lot charges", "lot", lotCharges]] as const).filter(([, , rate]) => rate !== "0");
    for (const [label, line] of charges) this.#figure(label, at(line), this.#money, "");
    this.#rounding(at("rounding"));
    const total = this.#figure(`=IF(B${rows.row}<0,"The client owes",${literalText(input.payment === "metal" ? "What is left, returned as metal" : "Payout")})`, at("payout"), this.#money, "", "total");
    if (input.payment === "metal") {
      const taken = `ROUND(${value}-${total},2)`;
      const format = input.metalUnit === "kg" ? plainFormat(5) : input.metalUnit === "g" ? plainFormat(2) : plainFormat(3);
      this.#figure("Fine metal returned", `=IF(ROUND(${payableFine}*${price}-${taken},2)<=0,"none",LOT.METALRETURN(${payableFine},"ozt",1,${taken},${price},${literalText(input.metalUnit)}))`, format, input.metalUnit, "total");
    }
    if (input.quoted) {
      const quoted = this.#term("Quoted, at the likely fineness", input.quoted.payout, this.#money, input.quoted.quote === undefined ? "" : `in ${input.quoted.quote}`);
      this.#figure("Settled less quoted", `=ROUND(${total}-${quoted},2)`, this.#money, "");
    }
    rows.next();
    return { fine, payout: total };
  }

  /** Where the silver went; gives the cell of the recovery. */
  silver(fine: string, fineness: string): string | null {
    const { rows, figures: { flow }, input: { found, uncertainty } } = this;
    if (!flow || !found.outturn) return null;
    rows.heading("What was found of it");
    const inputs = new Map<keyof Found, string>();
    for (const [field, label] of FOUND) {
      const weighed = found[field];
      if (!weighed) continue;
      this.#label(label);
      const value = rows.put("B", weighed.value, { look: "input", numberFormat: plainFormat(decimalsOf([weighed.value], 0, 4)) });
      rows.text("C", `${APART}${weighed.unit}`);
      inputs.set(field, weighed.unit === "ozt" || weighed.value === 0 ? fixed(value) : `LOT.WEIGHT(${fixed(value)},${literalText(weighed.unit)},"ozt")`);
      rows.next();
    }
    rows.next();
    rows.heading("Where the silver went", "ozt", "of the charge");
    const of = (field: keyof Found): string => inputs.get(field) ?? "0";
    const dropped = inputs.get("dropped") ?? [of("outturn"), of("stubs"), of("residues")].filter((part) => part !== "0").join("+");
    const call = `LOT.HELDBACK(${fine},${dropped},${of("liquor")},${of("stubs")},${of("residues")},${of("outturn")})`;
    flow.forEach(({ label, ozt }, i) => {
      if (ozt === 0 && label !== "Unaccounted") return;
      this.#label(label);
      rows.put("B", `=INDEX(${call},${i + 1},2)`, { numberFormat: plainFormat(3) });
      rows.put("C", `=INDEX(${call},${i + 1},3)`, { numberFormat: "0.00%" });
      rows.next();
    });
    const recovery = this.#figure("Recovery", `=LOT.RECOVERY(${of("outturn")},${fine})`, "0.00%", "", "total");
    if (uncertainty) this.#uncertainty(uncertainty, fine, of("outturn"), fineness);
    rows.next();
    return recovery;
  }

  /** Leaves room for a picture so high; gives the cell under its corner. */
  picture(height: number): string {
    const at = `A${this.rows.row}`;
    this.rows.next(Math.ceil(height / ROW_PIXELS) + 1);
    return at;
  }

  foot(): void {
    const { rows } = this;
    rows.next();
    rows.text("A", "For the shop");
    rows.text("D", "For the client");
    rows.next(2);
    rows.text("A", "______________________________");
    rows.text("D", "______________________________");
  }

  /** There only while there is an odd cent, since another assay may bring one. */
  #rounding(formula: string): void {
    const { rows } = this;
    const cell = rows.put("B", formula, { numberFormat: `${this.#money};-${this.#money};` });
    rows.put("A", `=IF(${cell}=0,"","Rounding")`, { look: "label" });
    rows.put("C", `=IF(${cell}=0,"","${APART}so that the lines add up")`);
    rows.next();
  }

  #uncertainty({ scale, assay }: NonNullable<StatementInput["uncertainty"]>, fine: string, outturn: string, fineness: string): void {
    const { rows } = this;
    const ofScale = (unit: string): string => `LOT.WEIGHT(${scale.value},${literalText(scale.unit)},${unit})`;
    const ofFine = `LOT.FINEU(${this.#weight},${ofScale(this.#unit)},${this.#unit},${fineness},${typeof assay === "number" ? assay : literalText(assay)},1,"ozt")`;
    this.#label("Its uncertainty");
    rows.put("B", `=LOT.RECOVERYU(${outturn},${ofScale('"ozt"')},${fine},${ofFine})`, { numberFormat: '"± "0.00%' });
    rows.text("C", `${APART}k = 2, from the scale (${scale.value} ${scale.unit}) and the assay (${assay})`);
    rows.next();
  }

  /** A label that is a formula follows the number beside it. */
  #label(text: string, look: "label" | "total" = "label"): void {
    if (text.startsWith("=")) this.rows.put("A", text, { look });
    else this.rows.text("A", text, { look });
  }

  #lines(label: string, lines: readonly string[]): void {
    lines.forEach((line, i) => {
      if (i === 0) this.#label(label);
      this.rows.text("B", line);
      this.rows.next();
    });
  }

  #written(label: string, value: Written): string {
    this.#label(label);
    const cell = this.rows.put("B", value, { look: "input", align: "right", ...(typeof value === "string" ? { asText: true } : {}) });
    this.rows.next();
    return fixed(cell);
  }

  #figure(label: string, formula: string, numberFormat: string, words: string, look: "label" | "total" = "label"): string {
    this.#label(label, look);
    const cell = this.rows.put("B", formula, { numberFormat, ...(look === "total" ? { look } : {}) });
    if (words !== "") this.rows.text("C", `${APART}${words}`);
    this.rows.next();
    return fixed(cell);
  }

  /** A number that is told. */
  #term(label: string, content: number, numberFormat: string, words: string): string {
    this.#label(label);
    const cell = this.rows.put("B", content, { numberFormat, look: "input" });
    if (words !== "") this.rows.text("C", `${APART}${words}`);
    this.rows.next();
    return fixed(cell);
  }

  /** A rate as it was told, and in a row of its own as the settlement takes it; a charge that is none is left out. */
  #rate(label: string, given: PerMass | undefined, of: string, unit: string): string {
    if (!given || (given.value === 0 && label !== "Price")) return "0";
    const format = moneyFormat(this.input.shop.currency, decimalsOf([given.value], 2, 4));
    const told = this.#term(label, given.value, format, `per ${given.unit}${of}`);
    if (given.unit === unit) return told;
    return this.#figure(`${label} per ${unit}`, `=LOT.PRICE(${told},${literalText(given.unit)},${literalText(unit)})`, moneyFormat(this.input.shop.currency, 4), "");
  }
}

const isDifference = (net: Weight, { gross, tare }: NonNullable<StatementInput["scale"]>, decimals: number): boolean =>
  gross.unit === net.unit && tare.unit === net.unit && Number((gross.value - tare.value).toFixed(decimals)) === net.value;

const FOUND: readonly (readonly [keyof Found, string])[] = [
  ["outturn", "Crystal weighed out"],
  ["dropped", "Cement silver dropped"],
  ["liquor", "Left in the liquor, by test"],
  ["stubs", "On stubs"],
  ["residues", "In filters, slimes and crucible skin"],
];
