/** How a cell looks. Colours are of our own choosing; the sheet "Read me" says what they mean. */
export interface Appearance {
  readonly size?: number;
  readonly bold?: boolean;
  readonly colour?: string;
  readonly fill?: string;
  readonly line?: { readonly side: "top" | "bottom" | "around"; readonly style: "thin" | "dashed"; readonly colour: string };
  readonly align?: "left" | "right";
  readonly indent?: number;
  readonly wraps?: boolean;
}

const SLATE = "FF2F3E46";
const INK = "FF1F2428";
const STONE = "FFE9E6DF";
const SAGE = "FFE3EFE8";
const GREY = "FF5B646A";
const RUST = "FF8A3B12";
const RULE = "FF8A949A";

export const looks = {
  title: { size: 16, bold: true, colour: SLATE },
  section: { size: 12, bold: true, colour: SLATE },
  heading: { bold: true, colour: SLATE, fill: STONE, wraps: true, align: "left" },
  unitHeading: { bold: true, colour: SLATE, fill: STONE, wraps: true, align: "left", indent: 1 },
  numberHeading: { bold: true, colour: SLATE, fill: STONE, wraps: true, align: "right", indent: 1 },
  label: { colour: INK },
  unit: { colour: INK, align: "left", indent: 1 },
  words: { colour: INK, wraps: true, align: "left", indent: 1 },
  input: { colour: INK, fill: SAGE, align: "right", indent: 1 },
  inputWord: { colour: INK, fill: SAGE, align: "left", indent: 1 },
  computed: { colour: INK, align: "right", indent: 1 },
  computedWord: { colour: INK, align: "left", indent: 1 },
  total: { bold: true, colour: INK, line: { side: "top", style: "thin", colour: SLATE }, align: "right", indent: 1 },
  totalUnit: { bold: true, colour: INK, line: { side: "top", style: "thin", colour: SLATE }, align: "left", indent: 1 },
  totalLabel: { bold: true, colour: INK, line: { side: "top", style: "thin", colour: SLATE } },
  typeHere: { colour: INK, line: { side: "around", style: "dashed", colour: RULE } },
  note: { size: 10, colour: GREY },
  noteBlock: { size: 10, colour: GREY, wraps: true },
  caution: { size: 10, colour: RUST },
  cautionBlock: { size: 10, colour: RUST, wraps: true },
} as const satisfies Readonly<Record<string, Appearance>>;

export type Look = keyof typeof looks;
