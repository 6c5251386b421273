import { lastDay, type Month, firstDay, following } from "./month-of";
import { dayNumber } from "../lots/calendar";
import type { LotsBlock } from "./lots-block";
import type { MonthInput } from "./month-input";
import { ROWS } from "./month-places";
import type { Opening } from "./opening";
import { READINGS } from "./readings";
import { FINE, INPUT, type Rows, SHARE, type SheetDraft, UNCERTAINTY, UNCERTAINTY_HEADING, rangeOf } from "./sheet-draft";

export interface Below {
  readonly list: string;
  readonly lots: LotsBlock;
  readonly countedRows: Rows;
  readonly shippedRows: Rows;
  /** Rows of counted lots that came in this month: one weighing stands in received and in closing, and drops out of the gap. */
  readonly stillAsCame: readonly number[];
}

const { opening: O, received: R, shipped: S, closing: C } = ROWS;

/** The rows that the months after this one read. */
export function balanceBlock(draft: SheetDraft, input: MonthInput, opening: Opening, { list, lots, countedRows, shippedRows, stillAsCame }: Below): void {
  const { month, scale, assay, bias, weighInBias } = input;
  const line = (row: number, label: string, from: string, look: "label" | "total" = "label"): void => {
    draft.text("A", label, look, row);
    draft.text("D", from, "note", row);
  };
  ["Balance", "Fine (ozt)", UNCERTAINTY_HEADING, "Where it comes from"].forEach((heading, i) => draft.put("ABCD"[i] ?? "", heading, { asText: true, look: "heading", align: i === 1 || i === 2 ? "right" : "left" }, O - 1));

  line(O, "Opening", opening.from);
  draft.put("B", opening.isEntered ? Number(opening.fine.value()) : `=${opening.fine.text}`, { ...FINE, ...(opening.isEntered ? INPUT : {}) }, O);
  draft.put("C", opening.isEntered ? Number(opening.uncertainty.value()) : `=${opening.uncertainty.text}`, { ...UNCERTAINTY, ...(opening.isEntered ? INPUT : {}) }, O);
  draft.text("A", "Received", "label", R);
  draft.put("B", `=D${lots.totals}`, FINE, R);
  draft.put("C", `=E${lots.totals}`, UNCERTAINTY, R);
  draft.put("D", guard(lots, list, month), { look: "note" }, R);
  line(S, "Shipped", `${count(input.shipped.length, "line", "lines")} below`);
  side(draft, S, shippedRows);
  line(C, "Closing", `${count(input.counted.length, "line", "lines")} counted on ${lastDay(month)}, below; the next month opens with it`);
  side(draft, C, countedRows);

  const isTaken = weighInBias !== null || stillAsCame.length > 0;
  const [uReceived, uClosing] = isTaken ? [ROWS.receivedTaken, ROWS.closingTaken] : [R, C];
  const block = `LOT.BALANCE($B$${O},$B$${R},$B$${S},$B$${C},$C$${O},$C$${uReceived},$C$${S},$C$${uClosing}${weighInBias === null ? `,$B$${ROWS.bias}` : ""})`;
  line(ROWS.unaccounted, "Unaccounted", "opening + received − shipped − closing; above 0 metal is missing", "total");
  draft.put("B", `=INDEX(${block},5,2)`, { ...FINE, look: "total" }, ROWS.unaccounted);
  line(ROWS.expanded, "Expanded uncertainty", "twice the whole standard uncertainty; a gap inside it is within measurement");
  draft.put("B", `=INDEX(${block},6,2)`, FINE, ROWS.expanded);
  line(ROWS.share, "Share of throughput", "of the larger of received and shipped");
  draft.put("B", `=INDEX(${block},7,2)`, { ...SHARE, align: "right" }, ROWS.share);
  draft.text("A", "Verdict", "total", ROWS.verdict);
  // The same words as those of LOT.BALANCE, which a spreadsheet without the add-in could not keep: it keeps numbers alone.
  const [gap, limit] = [`B${ROWS.unaccounted}`, `B${ROWS.expanded}`];
  draft.put("B", `=IF(ABS(${gap})<=${limit}*(1+1E-9),"within measurement",IF(${gap}<0,"metal over","metal missing"))`, { look: "total" }, ROWS.verdict);
  draft.text("A", "What it means", "label", ROWS.meaning);
  draft.put("B", said("meaning"), {}, ROWS.meaning);
  draft.text("A", "Look first at", "label", ROWS.lookFirst);
  draft.put("B", said("lookFirst"), {}, ROWS.lookFirst);

  line(ROWS.recovery, "Recovery of the lots finished", "fine metal out over fine metal in, of the month's lots that have an outturn");
  draft.put("B", `=IF(F${lots.totals}>0,LOT.RECOVERY(F${lots.totals},I${lots.totals}),"no lot finished")`, { ...SHARE, align: "right" }, ROWS.recovery);
  line(ROWS.recoveryExpanded, "Its expanded uncertainty", "both weights taken as independent");
  draft.put("B", `=IF(F${lots.totals}>0,LOT.RECOVERYU(F${lots.totals},G${lots.totals},I${lots.totals},J${lots.totals}),"")`, SHARE, ROWS.recoveryExpanded);
  line(ROWS.bias, "Bias of the scale", weighInBias === null ? "share; one scale weighs everything, so that it acts on the gap alone" : "share; it acts on opening − shipped − closing, which this scale weighs");
  draft.put("B", bias, { ...BIAS, ...INPUT }, ROWS.bias);
  line(ROWS.scale, "Scale, standard uncertainty", `in ${scale.unit}, of one weighing`);
  draft.put("B", scale.value, INPUT, ROWS.scale);
  line(ROWS.assay, "Assay, standard uncertainty", "in parts per thousand, of one assay");
  draft.put("B", assay, INPUT, ROWS.assay);
  if (weighInBias !== null) {
    line(ROWS.weighInBias, "Bias of the scale at weigh-in", "share; it acts on all that was received");
    draft.put("B", weighInBias, { ...BIAS, ...INPUT }, ROWS.weighInBias);
  }
  if (isTaken) taken(draft, weighInBias !== null, stillAsCame);
}

/** The uncertainties of received and closing as the balance takes them. */
function taken(draft: SheetDraft, hasOwnBias: boolean, stillAsCame: readonly number[]): void {
  const [less, lessSquared] = [stillAsCame.map((row) => `-B${row}`).join(""), stillAsCame.map((row) => `-C${row}^2`).join("")];
  const random = (row: number): string => (lessSquared === "" ? `C${row}^2` : `MAX(0,C${row}^2${lessSquared})`);
  const why = [hasOwnBias ? "with the bias of its scale" : "", less === "" ? "" : "without the lots that still lie as they came"].filter((part) => part !== "").join(", ");
  for (const [row, label, formula] of [
    [ROWS.receivedTaken, "Received, in the balance", `${random(R)}${hasOwnBias ? `+(B${ROWS.weighInBias}*(B${R}${less}))^2` : ""}`],
    [ROWS.closingTaken, "Closing, in the balance", `${random(C)}${hasOwnBias ? `+(B${ROWS.bias}*(B${O}-B${S}-(B${C}${less})))^2` : ""}`],
  ] as const) {
    draft.text("A", label, "label", row);
    draft.put("C", `=SQRT(${formula})`, UNCERTAINTY, row);
    draft.text("D", why, "note", row);
  }
}

const BIAS = { numberFormat: "0.000%" } as const;

function side(draft: SheetDraft, row: number, rows: Rows): void {
  draft.put("B", `=SUM(${rangeOf("B", rows)})`, FINE, row);
  draft.put("C", `=SQRT(SUMPRODUCT(${rangeOf("C", rows)},${rangeOf("C", rows)}))`, UNCERTAINTY, row);
}

/** A list that is sorted afterwards puts other lots into the cells that are read here. */
function guard({ rows, count: lots }: LotsBlock, list: string, month: Month): string {
  const here = `${count(lots, "lot", "lots")} of sheet ${list}, below`.replaceAll('"', '""');
  if (lots === 0) return here;
  const dates = rangeOf("B", rows);
  const [from, to] = [dayNumber(firstDay(month)), dayNumber(firstDay(following(month)))];
  return `=IF(COUNTIFS(${dates},"<${from}")+COUNTIFS(${dates},">=${to}")=0,"${here}","The list was sorted or changed: lots below are of another month. Delete this sheet and close the month again")`;
}

function said(what: "meaning" | "lookFirst"): string {
  const text = (verdict: keyof typeof READINGS): string => `"${READINGS[verdict][what]}"`;
  return `=IF(B${ROWS.verdict}="metal missing",${text("metal missing")},IF(B${ROWS.verdict}="metal over",${text("metal over")},${text("within measurement")}))`;
}

const count = (n: number, one: string, many: string): string => (n === 0 ? `no ${many}` : `${n} ${n === 1 ? one : many}`);
