import { LINE_COLOUR, LOOKS, type LookOf } from "../looks";
import type { SheetCell } from "../port";
import { insertingInOrder, prefixOf, settingAttribute } from "./children";
import { builtInNumber } from "./number-formats";
import { attributeEdits, edited } from "./xml-edits";
import { localName } from "./xml-tags";
import { encodeAttribute } from "./xml-text";
import { appending, attributeOf, childrenOf, type Element, rootOf } from "./xml-tree";

export const STYLES_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.styles+xml";

/** The least that Excel takes for a styles part. */
export const emptyStyles = (namespace: string): string =>
  `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<styleSheet xmlns="${namespace}">` +
  '<fonts count="1"><font><sz val="11"/><name val="Calibri"/><family val="2"/></font></fonts>' +
  '<fills count="2"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill></fills>' +
  '<borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders>' +
  '<cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs>' +
  '<cellXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/></cellXfs>' +
  '<cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles></styleSheet>';

const ORDER = ["numFmts", "fonts", "fills", "borders", "cellStyleXfs", "cellXfs", "cellStyles", "dxfs", "tableStyles", "colors", "extLst"];
/** Numbers below are the formats that every spreadsheet knows. */
const FIRST_OWN_FORMAT = 164;

export type CellLook = Pick<SheetCell, "look" | "numberFormat" | "wraps" | "align">;

/** A styles part to which formats are added at the ends of its lists, so that every number in the file keeps its meaning. */
export class Styles {
  readonly #x: string;
  readonly #found = new Map<string, number>();

  constructor(private text: string) {
    this.#x = prefixOf(text);
  }

  get xml(): string {
    return this.text;
  }

  /** A cell format like another one, with a number format of its own. */
  withNumberFormat(style: number, code: string): number {
    return this.#once(`${style} ${code}`, () => {
      const base = this.#items("cellXfs")[style];
      const xf = base ? this.text.slice(base.start, base.end) : `<${this.#x}xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>`;
      const numbered = edited(xf, [settingAttribute(xf, 0, "numFmtId", String(this.#numberFormat(code)))]);
      return this.#add("cellXfs", edited(numbered, [settingAttribute(numbered, 0, "applyNumberFormat", "1")]));
    });
  }

  /** The format of a cell of a sheet of ours; undefined where it is the plain one. */
  of({ look, numberFormat, wraps, align }: CellLook): number | undefined {
    if (look === undefined && numberFormat === undefined && !wraps && align === undefined) return undefined;
    return this.#once(JSON.stringify([look, numberFormat, wraps, align]), () => {
      const x = this.#x;
      const of: LookOf = look === undefined ? {} : LOOKS[look];
      const number = numberFormat === undefined ? 0 : this.#numberFormat(numberFormat);
      const font = of.bold || of.italic || of.size !== undefined || of.colour !== undefined ? this.#add("fonts", this.#font(of)) : 0;
      const fill = of.ground === undefined ? 0 : this.#add("fills", `<${x}fill><${x}patternFill patternType="solid"><${x}fgColor rgb="FF${of.ground}"/><${x}bgColor indexed="64"/></${x}patternFill></${x}fill>`);
      const border = of.lines === undefined ? 0 : this.#add("borders", this.#border(of.lines));
      const alignment = `<${x}alignment${align === undefined ? "" : ` horizontal="${align}"`} vertical="${wraps ? "top" : "bottom"}"${wraps ? ' wrapText="1"' : ""}/>`;
      const applies = `${number ? ' applyNumberFormat="1"' : ""}${font ? ' applyFont="1"' : ""}${fill ? ' applyFill="1"' : ""}${border ? ' applyBorder="1"' : ""} applyAlignment="1"`;
      return this.#add("cellXfs", `<${x}xf numFmtId="${number}" fontId="${font}" fillId="${fill}" borderId="${border}" xfId="0"${applies}>${alignment}</${x}xf>`);
    });
  }

  #once(key: string, find: () => number): number {
    const found = this.#found.get(key) ?? find();
    this.#found.set(key, found);
    return found;
  }

  #numberFormat(code: string): number {
    const builtIn = builtInNumber(code);
    if (builtIn !== undefined) return builtIn;
    const formats = this.#items("numFmts");
    const same = formats.find((format) => attributeOf(this.text, format, "formatCode") === code);
    if (same) return Number(attributeOf(this.text, same, "numFmtId"));
    const number = formats.reduce((most, format) => Math.max(most, Number(attributeOf(this.text, format, "numFmtId")) + 1), FIRST_OWN_FORMAT);
    this.#add("numFmts", `<${this.#x}numFmt numFmtId="${number}" formatCode="${encodeAttribute(code)}"/>`);
    return number;
  }

  /** The workbook's own text, made bold or large or coloured. */
  #font({ bold, italic, size, colour }: LookOf): string {
    const x = this.#x;
    const [base] = this.#items("fonts");
    const kept = base ? childrenOf(this.text, base) : [];
    const own = (name: string): string => kept.filter((one) => localName(one.name) === name).map(({ start, end }) => this.text.slice(start, end)).join("");
    return (
      `<${x}font>${bold ? `<${x}b/>` : ""}${italic ? `<${x}i/>` : ""}${size === undefined ? own("sz") : `<${x}sz val="${size}"/>`}` +
      `${colour === undefined ? own("color") : `<${x}color rgb="FF${colour}"/>`}${own("name")}${own("family")}${own("charset")}${own("scheme")}</${x}font>`
    );
  }

  #border(lines: NonNullable<LookOf["lines"]>): string {
    const x = this.#x;
    const side = (name: string, isDrawn: boolean): string =>
      isDrawn ? `<${x}${name} style="thin"><${x}color rgb="FF${LINE_COLOUR}"/></${x}${name}>` : `<${x}${name}/>`;
    const around = lines === "around";
    return `<${x}border>${side("left", around)}${side("right", around)}${side("top", around || lines === "over")}${side("bottom", around || lines === "under")}<${x}diagonal/></${x}border>`;
  }

  #list(name: string): Element | undefined {
    return childrenOf(this.text, rootOf(this.text)).find((one) => localName(one.name) === name);
  }

  #items(name: string): Element[] {
    const list = this.#list(name);
    return list ? childrenOf(this.text, list) : [];
  }

  /** An item's place in its list, at the end unless the very same one is there. */
  #add(name: string, item: string): number {
    const list = this.#list(name);
    if (!list) {
      const added = `<${this.#x}${name} count="1">${item}</${this.#x}${name}>`;
      this.text = edited(this.text, [insertingInOrder(this.text, ORDER, name, added)]);
      return 0;
    }
    const items = childrenOf(this.text, list);
    const same = items.findIndex(({ start, end }) => this.text.slice(start, end) === item);
    if (same >= 0) return same;
    this.text = edited(this.text, [...attributeEdits(this.text, list.start, "count", () => String(items.length + 1)), appending(list, item)]);
    return items.length;
  }
}
