import { LINE_COLOUR, LOOKS } from "../looks";
import type { SheetCell } from "../port";

const EDGES = ["EdgeTop", "EdgeBottom", "EdgeLeft", "EdgeRight"] as const;

/** Everything that a copied look may change in a cell, besides its number format. */
export interface CellLook {
  readonly format: Excel.RangeFormat;
  readonly font: Excel.RangeFont;
  readonly fill: Excel.RangeFill;
  readonly edges: readonly Excel.RangeBorder[];
}

/** Asks for the look of a cell; it is there after the next sync. */
export function askLook({ format }: Excel.Range): CellLook {
  return {
    format: format.load("horizontalAlignment,verticalAlignment,wrapText,indentLevel"),
    font: format.font.load("bold,italic,color,name,size,underline,strikethrough"),
    fill: format.fill.load("color,pattern"),
    edges: EDGES.map((edge) => format.borders.getItem(edge).load("style,color,weight")),
  };
}

export function giveLook({ format }: Excel.Range, look: CellLook): void {
  const { horizontalAlignment, verticalAlignment, wrapText, indentLevel } = look.format;
  Object.assign(format, { horizontalAlignment, verticalAlignment, wrapText, indentLevel });
  const { bold, italic, color, name, size, underline, strikethrough } = look.font;
  Object.assign(format.font, { bold, italic, color, name, size, underline, strikethrough });
  // A cell without a fill tells of a white one, which would hide the lines of the sheet.
  if (look.fill.pattern === "None") format.fill.clear();
  else format.fill.color = look.fill.color;
  look.edges.forEach(({ style, color: line, weight }, i) => {
    const border = format.borders.getItem(EDGES[i] as (typeof EDGES)[number]);
    border.style = style;
    if (style === "None") return;
    border.color = line;
    border.weight = weight;
  });
}

const ALIGNED = { left: "Left", right: "Right", center: "Center" } as const;

/** The look of a cell of a sheet of ours. */
export function dress({ format }: Excel.Range, { look, wraps, align }: SheetCell): void {
  const { bold, italic, size, colour, ground, lines } = look === undefined ? {} : LOOKS[look];
  if (bold) format.font.bold = true;
  if (italic) format.font.italic = true;
  if (size !== undefined) format.font.size = size;
  if (colour !== undefined) format.font.color = `#${colour}`;
  if (ground !== undefined) format.fill.color = `#${ground}`;
  for (const edge of lines === undefined ? [] : lines === "around" ? EDGES : [lines === "over" ? EDGES[0] : EDGES[1]]) {
    const border = format.borders.getItem(edge);
    border.style = "Continuous";
    border.color = `#${LINE_COLOUR}`;
  }
  if (wraps) {
    format.wrapText = true;
    format.verticalAlignment = "Top";
  }
  if (align !== undefined) format.horizontalAlignment = ALIGNED[align];
}
