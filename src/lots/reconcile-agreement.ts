import { type Contradiction, type Findings, lots } from "./reconcile-contradiction";

/** A cell that was held against what its row gives. */
export interface Compared extends Contradiction {
  /** What is compared, in the plural: "payouts". */
  readonly what: string;
  readonly agrees: boolean;
}

/** How many decimals a number is written with. */
export function decimals(value: number): number {
  const [, fraction = "", exponent = "0"] = /^-?\d+(?:\.(\d+))?(?:e([+-]\d+))?$/.exec(String(value)) ?? [];
  return Math.max(0, fraction.length - Number(exponent));
}

/** With how many decimals half of a column's numbers are written at least. */
export function usualDecimals(values: readonly number[]): number {
  const sorted = values.map(decimals).sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? 0;
}

/** The last digits of a spreadsheet's own arithmetic are no difference. */
const FLOAT = 1e-9;

/** Whether a number is another one, rounded to the digits with which its column is written; `slack` is a share of it. */
export function agrees(held: number, computed: number, columnDecimals: number, slack = 0): boolean {
  const step = 10 ** -Math.max(decimals(held), columnDecimals);
  return Math.abs(held - computed) <= (step / 2) * (1 + 1e-6) + Math.abs(computed) * (FLOAT + slack);
}

/**
 * Where most rows of a column follow from their rows, those that do not are contradictions. Where most do not, the
 * column comes from something that its row does not show, and no single row can be blamed.
 */
export function judged(compared: readonly Compared[]): Findings {
  const wrong = compared.filter((one) => !one.agrees);
  const [first] = wrong;
  if (!first) return { contradictions: [], remarks: [] };
  if (wrong.length * 2 <= compared.length) return { contradictions: wrong, remarks: [] };
  const remark = `The ${first.what} of ${wrong.length} of ${lots(compared.length)} do not follow from their columns, so that no one lot can be blamed: they may be reckoned in another way, use numbers outside the list, or a column is taken for the wrong thing (Set up a lot, Where lots live). In ${first.cell}: ${first.sentence}`;
  return { contradictions: [], remarks: [remark] };
}
