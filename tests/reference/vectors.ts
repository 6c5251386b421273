import { Ratio, zero } from "../../src/core/expression/ratio";

/** A line of a General Decimal Arithmetic test file, with the settings that stood above it. */
export interface Vector {
  readonly id: string;
  readonly operation: string;
  readonly operands: readonly string[];
  readonly result: string;
  readonly conditions: readonly string[];
  readonly rounding: string;
  readonly precision: number;
}

export function vectors(text: string): readonly Vector[] {
  const settings = new Map<string, string>();
  const found: Vector[] = [];
  for (const line of text.split("\n").map((whole) => whole.replace(/--.*/, "").trim())) {
    const [, name, setting] = /^(\w+)\s*:\s*(\S+)$/.exec(line) ?? [];
    if (name && setting) settings.set(name.toLowerCase(), setting);
    const [left, right] = line.split("->").map((side) => side.trim().split(/\s+/).map((word) => word.replace(/^'(.*)'$/, "$1")));
    const [id, operation, ...operands] = left ?? [];
    const [result, ...conditions] = right ?? [];
    if (id && operation && result)
      found.push({ id, operation, operands, result, conditions, rounding: settings.get("rounding") ?? "", precision: Number(settings.get("precision")) });
  }
  return found;
}

const NUMBER = /^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i;
const BEYOND_A_SPREADSHEET = 1000;

/** Why a vector says nothing of our rounding; null where it does. */
export function inapplicable({ operation, operands, result, conditions, rounding }: Vector, modes: readonly string[]): string | null {
  if (!modes.includes(rounding)) return "a rounding that the core does not offer";
  if (![...operands, result].every((number) => NUMBER.test(number))) return "no finite number, or an operation that the vectors call invalid";
  if ([...operands, result].some((number) => Math.abs(Number(/e(.*)$/i.exec(number)?.[1] ?? 0)) > BEYOND_A_SPREADSHEET))
    return "exponents beyond a spreadsheet's";
  if (conditions.some((condition) => ["Overflow", "Underflow", "Subnormal"].includes(condition))) return "limits of exponent that a spreadsheet does not have";
  if (operation === "power" && Math.abs(Number(operands[1])) > EXACT_POWER) return "a power that is not computed exactly";
  return null;
}

const EXACT_POWER = 8;

/** The exact number that a vector rounds, and to how many decimals. */
export function unrounded({ operation, operands, precision }: Vector): { readonly exact: Ratio; readonly places: number } {
  const [a, b] = operands.map((text) => Ratio.of(text));
  if (!a || !b) throw new Error(`${operation} has not two operands`);
  if (operation === "quantize") return { exact: a, places: decimals(operands[1] ?? "") };
  if (operation === "rescale") return { exact: a, places: -b.toNumber() };
  const exact = computed(operation, a, b);
  return { exact, places: exact.compare(zero) === 0 ? 0 : precision - 1 - exact.decimal().e };
}

function computed(operation: string, a: Ratio, b: Ratio): Ratio {
  switch (operation) {
    case "add":
      return a.plus(b);
    case "subtract":
      return a.minus(b);
    case "multiply":
      return a.times(b);
    case "divide":
      return a.over(b);
    case "power":
      return a.power(b);
    default:
      throw new Error(`No reading of ${operation}`);
  }
}

/** Decimals of a number as it is written: 1e-2 has two, 1E+10 has minus ten. */
function decimals(written: string): number {
  const [, fraction = "", exponent = "0"] = /^[+-]?\d*\.?(\d*)(?:e(.*))?$/i.exec(written) ?? [];
  return fraction.length - Number(exponent);
}
