import { SPREADSHEET } from "../../src/workbook/xlsx/xml-part";
import { encodeAttribute } from "../../src/workbook/xlsx/xml-text";
import { type Format, formats } from "./formats";
import { Listed } from "./listed";
import { type Appearance, type Look, looks } from "./looks";

const FIRST_FORMAT_OF_ONES_OWN = 164;
/** The first two fills are fixed by the file format. */
const FIXED_FILLS = ['<fill><patternFill patternType="none"/></fill>', '<fill><patternFill patternType="gray125"/></fill>'];
const NO_BORDER = "<border><left/><right/><top/><bottom/><diagonal/></border>";

/** Gives each pair of look and format its number, and writes the part that lists them. */
export class Styles {
  readonly #fonts = new Listed([font({})]);
  readonly #fills = new Listed(FIXED_FILLS);
  readonly #borders = new Listed([NO_BORDER]);
  readonly #formats = new Listed<string>([]);
  readonly #cells = new Listed(['<xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/>']);

  of(look: Look | null, format: Format = "general"): number {
    if (look === null) return 0;
    const appearance: Appearance = looks[look];
    const code = formats[format];
    const numbers = {
      numFmtId: code === "General" ? 0 : FIRST_FORMAT_OF_ONES_OWN + this.#formats.of(code),
      fontId: this.#fonts.of(font(appearance)),
      fillId: this.#fills.of(fill(appearance)),
      borderId: this.#borders.of(border(appearance)),
    };
    const attributes = Object.entries(numbers).map(([name, number]) => `${name}="${number}"`).join(" ");
    return this.#cells.of(
      `<xf ${attributes} xfId="0" applyNumberFormat="1" applyFont="1" applyFill="1" applyBorder="1" applyAlignment="1">${alignment(appearance)}</xf>`,
    );
  }

  xml(): string {
    const codes = this.#formats.all.map((code, i) => `<numFmt numFmtId="${FIRST_FORMAT_OF_ONES_OWN + i}" formatCode="${encodeAttribute(code)}"/>`);
    return `<styleSheet xmlns="${SPREADSHEET}">${[
      list("numFmts", codes),
      list("fonts", this.#fonts.all),
      list("fills", this.#fills.all),
      list("borders", this.#borders.all),
      list("cellStyleXfs", ['<xf numFmtId="0" fontId="0" fillId="0" borderId="0"/>']),
      list("cellXfs", this.#cells.all),
      list("cellStyles", ['<cellStyle name="Normal" xfId="0" builtinId="0"/>']),
    ].join("")}</styleSheet>`;
  }
}

const list = (name: string, items: readonly string[]): string => `<${name} count="${items.length}">${items.join("")}</${name}>`;

const font = ({ size = 11, bold, colour = "FF000000" }: Appearance): string =>
  `<font>${bold ? "<b/>" : ""}<sz val="${size}"/><color rgb="${colour}"/><name val="Calibri"/><family val="2"/></font>`;

const fill = ({ fill }: Appearance): string =>
  fill ? `<fill><patternFill patternType="solid"><fgColor rgb="${fill}"/><bgColor indexed="64"/></patternFill></fill>` : (FIXED_FILLS[0] ?? "");

function border({ line }: Appearance): string {
  const side = (name: string): string =>
    line && (line.side === "around" || line.side === name) ? `<${name} style="${line.style}"><color rgb="${line.colour}"/></${name}>` : `<${name}/>`;
  return `<border>${["left", "right", "top", "bottom"].map(side).join("")}<diagonal/></border>`;
}

const alignment = ({ align, indent, wraps }: Appearance): string =>
  `<alignment${align ? ` horizontal="${align}"` : ""}${indent ? ` indent="${indent}"` : ""} vertical="center"${wraps ? ' wrapText="1"' : ""}/>`;
