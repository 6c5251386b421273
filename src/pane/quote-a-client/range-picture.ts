import type { PriceCase, QuoteFigures } from "../../lots/quote-figures";
import type { PictureColours } from "../picture/colours";
import type { Drawing } from "../picture/drawing";
import { type Svg, svg } from "../picture/svg";

export interface RangeWords {
  /** What a figure is called: payout, or fine metal in a unit. */
  readonly of: string;
  readonly shown: (value: number) => string;
  /** Without the sign of the money. */
  readonly bare: (value: number) => string;
  readonly price: (price: number) => string;
}

const [TOP, STEP, BAR] = [6, 42, 14] as const;

/** For each price a bar from the low to the high fineness, with a line at the likely one; all on one scale. */
export function rangePicture({ down, quoted, up }: QuoteFigures, isMetal: boolean, words: RangeWords, colours: PictureColours, width: number): Drawing | null {
  const cases = ([["Price down", down], ["As quoted", quoted], ["Price up", up]] as const).flatMap(([label, one]) => {
    const values = valuesOf(one, isMetal);
    return values ? [{ label: `${label}, ${words.price(one.price)}`, values }] : [];
  });
  const all = cases.flatMap(({ values }) => values);
  if (all.length === 0) return null;
  // Beside each bar stand its two ends.
  const side = 10 + 7 * Math.max(...all.map((value) => words.shown(value).length));
  const [least, most] = [Math.min(...all), Math.max(...all)];
  const span = most - least || 1;
  const x = (value: number): number => Number((side + ((value - least) / span) * (width - 2 * side)).toFixed(1));
  return {
    width,
    height: TOP + STEP * cases.length,
    alt: `Range of the ${words.of}, by the price per ozt: ${cases.map(({ label, values: [low, likely, high] }) => `${label}: ${words.shown(low)} to ${words.shown(high)}, likely ${words.shown(likely)}`).join("; ")}`,
    shapes: [
      ...cases.flatMap(({ label, values }, i) => bar(label, values, TOP + STEP * i, x, words, colours, width)),
    ],
  };
}

const valuesOf = ({ payouts, metal: [low, likely, high] }: PriceCase, isMetal: boolean): readonly [number, number, number] | null =>
  !isMetal ? payouts : low === null || likely === null || high === null ? null : [low, likely, high];

function bar(label: string, [low, likely, high]: readonly [number, number, number], top: number, x: (value: number) => number, { shown }: RangeWords, colours: PictureColours, width: number): Svg[] {
  const [line, middle] = [top + 12, top + 12 + 6 + BAR / 2];
  const text = (at: number, y: number, anchor: string, content: string, more: Svg["attributes"] = {}): Svg => svg("text", { x: at, y, "text-anchor": anchor, fill: colours.text, ...more }, content);
  return [
    text(0, line, "start", label, { fill: colours.muted }),
    text(width, line, "end", `likely ${shown(likely)}`, { "font-weight": 600 }),
    svg("rect", { x: x(low), y: middle - BAR / 2, width: Math.max(1, x(high) - x(low)), height: BAR, rx: 2, fill: colours.area, stroke: colours.edge }),
    svg("line", { x1: x(likely), x2: x(likely), y1: middle - BAR / 2 - 2, y2: middle + BAR / 2 + 2, stroke: colours.accent, "stroke-width": 3 }),
    text(x(low) - 5, middle + 4, "end", shown(low)),
    text(x(high) + 5, middle + 4, "start", shown(high)),
  ];
}
