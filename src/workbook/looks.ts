import type { Look } from "./port";

/** How a cell of a sheet of ours looks, in every host; colours are RRGGBB. */
export interface LookOf {
  readonly bold?: true;
  readonly italic?: true;
  /** In points; else as the workbook's own text. */
  readonly size?: number;
  readonly colour?: string;
  readonly ground?: string;
  readonly lines?: "under" | "over" | "around";
}

export const LINE_COLOUR = "9AA3A8";

export const LOOKS: Readonly<Record<Look, LookOf>> = {
  title: { bold: true, size: 16 },
  heading: { bold: true, ground: "E9EDEE", lines: "under" },
  label: { colour: "4A5358" },
  input: { ground: "FBF7E4", lines: "around" },
  note: { italic: true, size: 9, colour: "4A5358" },
  total: { bold: true, lines: "over" },
  caution: { bold: true, colour: "7A2E0E", ground: "FCEEE3" },
};
