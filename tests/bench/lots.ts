import { random } from "../random";

type Column = number[][];

/** Columns of believable lots as a spreadsheet gives them: rows of one cell. */
export interface Lots {
  readonly fine: Column;
  readonly price: Column;
  readonly payable: Column;
  readonly refiningCharge: Column;
  readonly lotCharges: Column;
  /** Day numbers of one year. */
  readonly dates: Column;
  readonly fineOut: Column;
  /** One of fifty. */
  readonly clients: string[][];
}

export function lots(rows: number, seed = 1): Lots {
  const { decimal, whole } = random(seed);
  const column = <T>(cell: (row: number) => T): T[][] => Array.from({ length: rows }, (_, row) => [cell(row)]);
  const fine = column(() => decimal(1, 400, 3));
  return {
    fine,
    price: column(() => decimal(20, 35, 2)),
    payable: column(() => decimal(0.9, 0.99, 3)),
    refiningCharge: column(() => decimal(0.2, 0.8, 2)),
    lotCharges: column(() => decimal(10, 60, 2)),
    dates: column(() => whole(45_658, 46_022)),
    fineOut: column((row) => Math.round((fine[row]?.[0] as number) * 990) / 1000),
    clients: column(() => `C-${whole(11, 60)}`),
  };
}
