import type { DropCurve } from "../../../lots/batch-plan-pictures";
import type { Notation } from "../../notation";
import { paneColours as colours } from "../../picture/colours";
import type { Drawing } from "../../picture/drawing";
import { type Svg, svg } from "../../picture/svg";
import { percent, sensible } from "./shown";

const [WIDTH, HEIGHT] = [272, 160];
const PLOT = { left: 8, right: 264, top: 46, bottom: 140 };

/** Silver left in the liquor against the hours, with the test and the decanting marked. */
export function curvePicture({ unit, points, test, decant }: DropCurve, notation: Notation): Drawing {
  const last = decant ?? test;
  const start = points[0]?.left ?? 0;
  const end = points.at(-1)?.left ?? 0;
  const amount = (left: number): string => (unit === "share" ? percent(left, notation) : `${sensible(left, notation)} g/L`);
  const hours = (of: number): string => `${sensible(of, notation)} h`;
  const x = (of: number): number => place(PLOT.left + ((PLOT.right - PLOT.left) * of) / (last || 1));
  const y = (left: number): number => place(PLOT.bottom - ((PLOT.bottom - PLOT.top) * left) / (start || 1));
  // When the bars are lifted nothing more drops.
  const curve = [...points.map((point) => `${x(point.hours)},${y(point.left)}`), `${x(last)},${y(end)}`].join(" ");
  return {
    width: WIDTH,
    height: HEIGHT,
    alt: `Silver left in the liquor: ${amount(start)} at the start, ${halfway(points, amount)}${amount(end)} at the test after ${hours(test)}${decant === null ? "" : `; decanted after ${hours(decant)}`}`,
    shapes: [
      svg("line", { x1: PLOT.left, x2: PLOT.right, y1: PLOT.bottom, y2: PLOT.bottom, stroke: colours.edge }),
      svg("line", { x1: PLOT.left, x2: PLOT.left, y1: PLOT.top, y2: PLOT.bottom, stroke: colours.edge }),
      ...marked(x(test), 27, `test ${hours(test)}`),
      ...(decant === null ? [] : marked(x(decant), 12, `decant ${hours(decant)}`)),
      svg("polyline", { points: curve, fill: "none", stroke: colours.accent, "stroke-width": 2, "stroke-linejoin": "round" }),
      text(PLOT.left + 6, PLOT.top + 4, amount(start), "start", colours.text),
      text(PLOT.left, HEIGHT - 6, "0 h", "start", colours.muted),
      text(PLOT.right, HEIGHT - 6, `${amount(end)} left`, "end", colours.text),
    ],
  };
}

function halfway(points: DropCurve["points"], amount: (left: number) => string): string {
  const middle = points[Math.floor(points.length / 2)];
  return middle ? `${amount(middle.left)} half-way, ` : "";
}

const marked = (x: number, y: number, words: string): Svg[] => [
  svg("line", { x1: x, x2: x, y1: y + 3, y2: PLOT.bottom, stroke: colours.edge, "stroke-dasharray": "3 3" }),
  text(x, y, words, "end", colours.muted),
];

const text = (x: number, y: number, words: string, anchor: "start" | "end", fill: string): Svg => svg("text", { x, y, "text-anchor": anchor, fill }, words);

const place = (of: number): number => Math.round(of * 10) / 10;
