import type { Lots } from "./lots";

const at = (column: readonly (readonly number[])[], row: number): number => column[row]?.[0] as number;

/** What a payout costs at the least: a loop in float64 that checks nothing and rounds by floor. */
export function barePayouts({ fine, price, payable, refiningCharge, lotCharges }: Lots): number[][] {
  const paid = new Array<number[]>(fine.length);
  for (let row = 0; row < fine.length; row++) {
    const money = at(fine, row) * at(payable, row) * (at(price, row) - at(refiningCharge, row)) - at(lotCharges, row);
    paid[row] = [Math.floor(money * 100 + 0.5) / 100];
  }
  return paid;
}

interface Sum {
  readonly month: number;
  readonly client: string;
  fineIn: number;
  fineOut: number;
  lots: number;
}

const DAY = 86_400_000;
const DAY_ZERO = Date.UTC(1899, 11, 30);

/** The months of the lots by client, in float64 and unchecked. */
export function bareMonths({ dates, fine, fineOut, clients }: Lots): (number | string)[][] {
  const months = new Map<number, Map<string, Sum>>();
  for (let row = 0; row < dates.length; row++) {
    const date = new Date(DAY_ZERO + at(dates, row) * DAY);
    const month = date.getUTCFullYear() * 12 + date.getUTCMonth();
    const client = clients[row]?.[0] as string;
    let sums = months.get(month);
    if (!sums) months.set(month, (sums = new Map()));
    let sum = sums.get(client);
    if (!sum) sums.set(client, (sum = { month, client, fineIn: 0, fineOut: 0, lots: 0 }));
    sum.fineIn += at(fine, row);
    sum.fineOut += at(fineOut, row);
    sum.lots++;
  }
  return [...months.values()].flatMap((sums) => [...sums.values()].map((s) => [s.month, s.client, s.fineIn, s.fineOut, s.fineOut / s.fineIn, s.lots]));
}
