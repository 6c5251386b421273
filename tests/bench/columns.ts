import { cellFunction } from "../../src/excel/associate";
import { bareMonths, barePayouts } from "./bare";
import { lots } from "./lots";
import { medians } from "./measure";
import { called, months, payouts } from "./ours";
import { type Row, atMost, digits } from "./row";

const LOTS = 100_000;

/** Long columns beside the bare loops, and how they grow. */
export function columns(): { rows: Row[]; payoutsMs: number; monthsMs: number } {
  const all = lots(LOTS);
  const asExcelCalls = cellFunction(called("PAYOUTS"));
  const paid = medians({
    bare: () => barePayouts(all),
    ours: () => payouts(all),
    excel: () => asExcelCalls(all.fine, [["ozt"]], all.price, all.payable, all.refiningCharge, all.lotCharges, null, {}),
  }, { rounds: 41 });
  const summed = medians({ bare: () => bareMonths(all), ours: () => months(all) });
  return {
    rows: [
      atMost("PAYOUTS on 100,000 lots, beside a bare float64 loop", paid.ours, paid.bare, 1.5),
      { ...atMost("the same with what Excel's edge adds", paid.excel, paid.bare, Infinity), goal: "—" },
      atMost("MONTHS on 100,000 lots, 12 months × 50 clients, beside a bare loop", summed.ours, summed.bare, 2.5),
      growth("PAYOUTS", payouts),
      growth("MONTHS", months),
    ],
    payoutsMs: paid.ours,
    monthsMs: summed.ours,
  };
}

const SHORT = 10_000;
const LONG = 1_000_000;

/** Linear growth keeps the time of a row; the caches of a processor allow it some more. */
function growth(name: string, work: (all: ReturnType<typeof lots>) => unknown): Row {
  const [short, long] = [lots(SHORT), lots(LONG)];
  const { few, many } = medians({ few: () => { for (let i = 0; i < LONG / SHORT / 10; i++) work(short); }, many: () => work(long) }, { rounds: 7, warm: 2 });
  const ratio = many / (few * 10);
  return { what: `${name}: a row's time at 1,000,000 rows, beside that at 10,000`, figure: `${digits(ratio)} ×`, goal: "linear: at most 3 ×", isMet: ratio <= 3 };
}
