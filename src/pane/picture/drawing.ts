import { h } from "../dom";
import { type Svg, svg, svgElement, svgText } from "./svg";

/** A drawing of a given size, in the units of its shapes; a unit is a pixel where there is room for it. */
export interface Drawing {
  readonly width: number;
  readonly height: number;
  /** What it shows, for those who do not see it. */
  readonly alt: string;
  readonly shapes: readonly Svg[];
}

const FONT = { "font-family": "Segoe UI, Helvetica Neue, Arial, DejaVu Sans, sans-serif", "font-size": 11 };

/** For the pane: as wide as it, up to half as large again as it was drawn. */
export const drawingElement = (drawing: Drawing): HTMLElement => {
  const root = svgElement(rootOf(drawing, { role: "img", "aria-label": drawing.alt }));
  root.style.maxInlineSize = `${drawing.width * 1.5}px`;
  return h("div", { class: "lw-picture" }, root);
};

/** For `pngOf`, with the width and height of the picture. */
export const drawingText = (drawing: Drawing): string => svgText(rootOf(drawing, { width: drawing.width, height: drawing.height }));

const rootOf = ({ width, height, shapes }: Drawing, attributes: Svg["attributes"]): Svg => svg("svg", { ...attributes, viewBox: `0 0 ${width} ${height}`, ...FONT }, ...shapes);
