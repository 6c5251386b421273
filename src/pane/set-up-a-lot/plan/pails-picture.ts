import type { PailsFilled } from "../../../lots/batch-plan-pictures";
import type { Notation } from "../../notation";
import { paneColours as colours } from "../../picture/colours";
import type { Drawing } from "../../picture/drawing";
import { type Svg, svg } from "../../picture/svg";
import { percent, sensible } from "./shown";

const [WIDTH, HEIGHT] = [272, 104];
const [BRIM, FLOOR] = [12, 96];
/** More of them are told by their number. */
const DRAWN = 6;
const GAP = 10;
const WIDEST = 64;
/** A pail narrows towards its floor. */
const TAPER = 0.1;

/** The pails side by side, with the liquor in each and the line to which they are filled. */
export function pailsPicture(pails: PailsFilled, notation: Notation): Drawing {
  const drawn = Math.min(pails.count, DRAWN);
  const room = WIDTH - 76;
  const wide = Math.min(WIDEST, (room - GAP * (drawn - 1)) / drawn);
  const y = (share: number): number => Math.round((FLOOR - (FLOOR - BRIM) * Math.min(share, 1)) * 10) / 10;
  const right = drawn * wide + (drawn - 1) * GAP;
  return {
    width: WIDTH,
    height: HEIGHT,
    alt: `${pailsSentence(pails, notation)}. They are filled to ${percent(pails.fill, notation)} at most`,
    shapes: [
      ...Array.from({ length: drawn }, (_, i) => pail(1 + i * (wide + GAP), wide, pails, y)).flat(),
      svg("line", { x1: 0, x2: right + 8, y1: y(pails.fill), y2: y(pails.fill), stroke: colours.caution, "stroke-width": 1.5, "stroke-dasharray": "5 3" }),
      svg("text", { x: right + 12, y: y(pails.fill) + 4, fill: colours.text }, `fill ${percent(pails.fill, notation)}`),
      ...(pails.count > drawn ? [svg("text", { x: right + 12, y: FLOOR, fill: colours.muted }, `and ${pails.count - drawn} more`)] : []),
    ],
  };
}

export function pailsSentence({ count, holds, unit, least, most }: PailsFilled, notation: Notation): string {
  const level = least === most ? percent(most, notation) : `${percent(least, notation)} to ${percent(most, notation)}`;
  return `${count} ${count === 1 ? "pail" : "pails"} of ${sensible(holds, notation)} ${unit}: the liquor stands at ${level} of the brim`;
}

function pail(x: number, wide: number, { fill, least, most }: PailsFilled, y: (share: number) => number): Svg[] {
  const outline = between(x, wide, 0, 1, y);
  return [
    svg("polygon", { points: between(x, wide, 0, Math.min(most, 1), y), fill: colours.area }),
    ...(most > fill ? [svg("polygon", { points: between(x, wide, fill, Math.min(most, 1), y), fill: colours.caution })] : []),
    ...[...new Set([least, most])].filter((share) => share <= 1).map((share) => level(x, wide, share, y)),
    svg("polygon", { points: outline, fill: "none", stroke: colours.edge, "stroke-width": 1.5, "stroke-linejoin": "round" }),
  ];
}

const level = (x: number, wide: number, share: number, y: (share: number) => number): Svg => {
  const inset = wide * TAPER * (1 - share);
  return svg("line", { x1: x + inset, x2: x + wide - inset, y1: y(share), y2: y(share), stroke: colours.accent, "stroke-width": 1.5 });
};

function between(x: number, wide: number, low: number, high: number, y: (share: number) => number): string {
  const inset = (share: number): number => wide * TAPER * (1 - share);
  const corners = [[x + inset(low), y(low)], [x + inset(high), y(high)], [x + wide - inset(high), y(high)], [x + wide - inset(low), y(low)]] as const;
  return corners.map(([a, b]) => `${Math.round(a * 10) / 10},${b}`).join(" ");
}
