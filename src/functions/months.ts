import { type MonthRow, Months } from "../core/months";
import { type Ratio, zero } from "../core/expression/ratio";
import { show } from "../core/expression/show";
import type { Working } from "../core/expression/working";
import { fail, quoted } from "../core/fault";
import type { Answer, CellValue } from "./answer";
import { eachFilledRow, range } from "./range";
import { type QuickReader, type Reader, dateTime, fromZero } from "./reader";

/** A name is compared and shown, never computed with. */
const nameReader: Reader = { ...fromZero, wants: "a name" };
const NAMED = "a name of up to 255 characters";

function groupName(cell: unknown): string {
  const fits = (typeof cell === "string" || typeof cell === "number") && String(cell).length <= 255;
  return fits ? String(cell) : fail({ kind: "unfit", name: "group", got: quoted(cell), wants: NAMED });
}

/** Most cells hold a number that the reader takes as it stands; the others it reads, or says what is wrong. */
function number(reader: QuickReader, name: string, cell: unknown, row: number): number {
  const quick = typeof cell === "number" ? reader.fast(cell) : NaN;
  return Number.isNaN(quick) ? reader.read(cell, `${name}, row ${row}`).toNumber() : quick;
}

const RULE: Working = {
  title: "Months",
  lines: [{ part: "rule", text: "lots of one month, and of one group in it, added up; recovery is fine out over fine in" }],
};

/** A grouping by month is beyond the algebra: it gives its own working, and its native twin is its value. */
export function monthsAnswer(dates: unknown, fineIn: unknown, fineOut: unknown, group?: unknown): Answer {
  const grouped = group !== undefined && group !== null;
  const asked = [
    range("dates", dates, dateTime),
    range("fineIn", fineIn, fromZero),
    range("fineOut", fineOut, fromZero),
    ...(grouped ? [range("group", group, nameReader)] : []),
  ];
  const read = (): readonly MonthRow[] => {
    const months = new Months();
    eachFilledRow(asked, (row, cells) =>
      months.add(
        number(dateTime, "dates", cells[0], row),
        number(fromZero, "fineIn", cells[1], row),
        number(fromZero, "fineOut", cells[2], row),
        grouped ? groupName(cells[3]) : "",
      ),
    );
    return months.rows();
  };
  const heading = ["Month", ...(grouped ? ["Group"] : []), "Fine in", "Fine out", "Recovery", "Lots"];
  return {
    arguments: [
      ...asked.map(({ name, reader }) => ({ name, wants: `a range, each cell ${reader.wants}` })),
      ...(grouped ? [] : [{ name: "group", wants: `a range, each cell ${nameReader.wants}`, otherwise: "none" }]),
    ],
    value: () => [heading, ...read().map((row) => cells(row, grouped))],
    working: () => ({
      ...RULE,
      lines: [
        ...RULE.lines,
        ...read().map((row) => ({ part: "result" as const, text: sentence(row) })),
      ],
    }),
    outline: () => RULE,
    native: () => null,
  };
}

const cells = (row: MonthRow, grouped: boolean): CellValue[] => [
  row.month,
  ...(grouped ? [row.group] : []),
  finite(row.fineIn, "fine in"),
  finite(row.fineOut, "fine out"),
  share(row),
  row.lots,
];

function finite(amount: Ratio, what: string): number {
  const number = amount.toNumber();
  return Number.isFinite(number) ? number : fail({ kind: "not-finite", what });
}

function share(row: MonthRow): CellValue {
  const found = recovery(row);
  return found === null ? "" : finite(found, "recovery");
}

const recovery = ({ fineIn, fineOut }: MonthRow): Ratio | null => (fineIn.compare(zero) > 0 ? fineOut.over(fineIn) : null);

function sentence(row: MonthRow): string {
  const share = recovery(row);
  const month = new Date(Date.UTC(1899, 11, 30 + row.month)).toISOString().slice(0, 7);
  const name = row.group ? `${month}, ${row.group}` : month;
  return `${name}: in ${show(row.fineIn)}, out ${show(row.fineOut)}${share ? `, recovery ${show(share)}` : ""}, lots ${row.lots}`;
}
