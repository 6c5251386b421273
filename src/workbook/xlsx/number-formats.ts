import { attributeOf, childrenOf, type Element, rootOf } from "./xml-tree";
import { localName } from "./xml-tags";

/** The formats that a file names by number alone; the rest of the first 164 depend on the country and are told as what they are in en-US. */
const BUILT_IN: Readonly<Record<number, string>> = {
  1: "0", 2: "0.00", 3: "#,##0", 4: "#,##0.00",
  5: "$#,##0_);($#,##0)", 6: "$#,##0_);[Red]($#,##0)", 7: "$#,##0.00_);($#,##0.00)", 8: "$#,##0.00_);[Red]($#,##0.00)",
  9: "0%", 10: "0.00%", 11: "0.00E+00", 12: "# ?/?", 13: "# ??/??",
  14: "m/d/yyyy", 15: "d-mmm-yy", 16: "d-mmm", 17: "mmm-yy", 18: "h:mm AM/PM", 19: "h:mm:ss AM/PM", 20: "h:mm", 21: "h:mm:ss", 22: "m/d/yyyy h:mm",
  37: "#,##0_);(#,##0)", 38: "#,##0_);[Red](#,##0)", 39: "#,##0.00_);(#,##0.00)", 40: "#,##0.00_);[Red](#,##0.00)",
  41: '_(* #,##0_);_(* (#,##0);_(* "-"_);_(@_)', 42: '_($* #,##0_);_($* (#,##0);_($* "-"_);_(@_)',
  43: '_(* #,##0.00_);_(* (#,##0.00);_(* "-"??_);_(@_)', 44: '_($* #,##0.00_);_($* (#,##0.00);_($* "-"??_);_(@_)',
  45: "mm:ss", 46: "[h]:mm:ss", 47: "mm:ss.0", 48: "##0.0E+0", 49: "@",
};

export const builtInNumber = (code: string): number | undefined => {
  if (/^general$/i.test(code)) return 0;
  const found = Object.entries(BUILT_IN).find(([, one]) => one === code);
  return found && Number(found[0]);
};

/** The number format of every style of a workbook, by the style's place in the list; undefined where it is General. */
export function formatCodes(styles: string): (string | undefined)[] {
  const lists = childrenOf(styles, rootOf(styles));
  const list = (name: string): Element[] => lists.filter((one) => localName(one.name) === name).flatMap((one) => childrenOf(styles, one));
  const own = new Map(list("numFmts").map((format) => [attributeOf(styles, format, "numFmtId"), attributeOf(styles, format, "formatCode")]));
  return list("cellXfs").map((style) => {
    const id = attributeOf(styles, style, "numFmtId") ?? "0";
    const code = own.get(id) ?? BUILT_IN[Number(id)];
    return code === undefined || /^general$/i.test(code) ? undefined : code;
  });
}
