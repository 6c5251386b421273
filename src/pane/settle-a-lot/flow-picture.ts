import type { FlowPart } from "../../lots/settlement-figures";
import type { PictureColours } from "../picture/colours";
import type { Drawing } from "../picture/drawing";
import { type Svg, svg } from "../picture/svg";

export interface FlowWords {
  readonly weight: (ozt: number) => string;
  readonly share: (share: number) => string;
}

const [TOP, TALL, GAP, LABEL] = [22, 132, 6, 28] as const;
const NODE = 10;
/** For the words at the right. */
const WORDS = 166;

/**
 * From the charge at the left to where its silver is at the right, in bands as wide as their weights. Where more came out
 * than went in, what nobody can explain comes in at the left in a dashed outline.
 */
export function flowPicture(parts: readonly FlowPart[], words: FlowWords, colours: PictureColours, width: number): Drawing | null {
  const out = parts.filter(({ ozt }) => ozt > 0);
  const unexplained = parts.filter(({ ozt }) => ozt < 0);
  const over = unexplained.reduce((sum, { ozt }) => sum - ozt, 0);
  const charge = parts.reduce((sum, { ozt }) => sum + ozt, 0);
  if (out.length === 0 || !(charge > 0)) return null;
  const scale = TALL / (charge + over);
  const right = width - WORDS - NODE;
  const tops = placed(out.map(({ ozt }) => ozt * scale));
  const left = { charge: TOP, over: TOP + charge * scale + GAP } as const;
  const shapes: Svg[] = [text(0, TOP - 8, `Charge ${words.weight(charge)}`, colours.text, true), svg("rect", { x: 0, y: TOP, width: NODE, height: round(charge * scale), fill: colours.edge })];
  if (over > 0) shapes.push(svg("rect", { x: 1, y: round(left.over), width: NODE - 2, height: round(Math.max(2, over * scale)), ...dashed(colours) }));
  let taken = 0;
  out.forEach((part, i) => {
    const to = tops[i] ?? TOP;
    const isCrystal = part.label === CRYSTAL;
    const isLost = part.label === UNACCOUNTED;
    const known = over > 0 ? Math.max(0, Math.min(part.ozt, charge - taken)) : part.ozt;
    const [high, rest] = [known * scale, (part.ozt - known) * scale];
    if (known > 0) shapes.push(band([NODE, left.charge + taken * scale], [right, to], high, isLost ? colours.caution : colours.area, colours));
    if (rest > 0) shapes.push(band([NODE, left.over + Math.max(0, taken - charge) * scale], [right, to + high], rest, colours.caution, colours));
    shapes.push(svg("rect", { x: right, y: round(to), width: NODE, height: round(Math.max(1.5, high + rest)), fill: isLost ? colours.caution : isCrystal ? colours.accent : colours.edge }));
    shapes.push(text(right + NODE + 6, round(to + 10), part.label, colours.text, isCrystal));
    shapes.push(text(right + NODE + 6, round(to + 23), `${words.weight(part.ozt)} · ${words.share(part.share)}`, colours.muted));
    taken += part.ozt;
  });
  const bottom = Math.max(TOP + TALL + (over > 0 ? GAP : 0), (tops.at(-1) ?? TOP) + LABEL);
  const sentences = unexplained.map(({ label, ozt }) => `${words.weight(-ozt)} more ${label === UNACCOUNTED ? "came out than went in" : "was worked up than dropped"}`);
  sentences.forEach((sentence, i) => {
    const line = bottom + 16 + i * 15;
    shapes.push(svg("rect", { x: 1, y: line - 8, width: NODE - 2, height: 8, ...dashed(colours) }), text(NODE + 6, line, sentence, colours.text));
  });
  const found = out.map(({ label, ozt, share }) => `${label.toLowerCase()} ${words.weight(ozt)} (${words.share(share)})`);
  return {
    width,
    height: Math.ceil(bottom + sentences.length * 15 + (sentences.length > 0 ? 6 : 0)),
    alt: [`Where the silver went: of ${words.weight(charge)} charged, ${found.join(", ")}`, ...sentences].join("; "),
    shapes,
  };
}

const [CRYSTAL, UNACCOUNTED] = ["Crystal", "Unaccounted"] as const;

const dashed = ({ caution }: PictureColours): Svg["attributes"] => ({ fill: "none", stroke: caution, "stroke-width": 2, "stroke-dasharray": "3 2" });

/** Each part below the one before, with room for its two lines of words. */
function placed(heights: readonly number[]): number[] {
  const tops: number[] = [];
  let at = TOP;
  for (const height of heights) {
    tops.push(at);
    at += Math.max(height + GAP, LABEL + 4);
  }
  return tops;
}

function band([x1, y1]: readonly [number, number], [x2, y2]: readonly [number, number], height: number, fill: string, { edge }: PictureColours): Svg {
  const middle = round((x1 + x2) / 2);
  const thick = Math.max(1, height);
  const [a, b, c, d] = [round(y1), round(y2), round(y2 + thick), round(y1 + thick)];
  return svg("path", { d: `M${x1} ${a}C${middle} ${a} ${middle} ${b} ${x2} ${b}L${x2} ${c}C${middle} ${c} ${middle} ${d} ${x1} ${d}Z`, fill, "fill-opacity": 0.75, stroke: edge, "stroke-width": 0.5 });
}

const text = (x: number, y: number, content: string, fill: string, isBold = false): Svg => svg("text", { x, y, fill, ...(isBold ? { "font-weight": 600 } : {}) }, content);

const round = (value: number): number => Number(value.toFixed(1));
