import { isInside, readArea } from "../../src/workbook/xlsx/address";
import { encodeAttribute, encodeText } from "../../src/workbook/xlsx/xml-text";
import type { BarChart, Sheet } from "./book";
import type { ValuedCell } from "./computed-book";
import { formats } from "./formats";
import { RELATIONSHIPS } from "./relationships";
import { quoted } from "./sheet-part";

const DRAWING = "http://schemas.openxmlformats.org/drawingml/2006/main";
const CHART = "http://schemas.openxmlformats.org/drawingml/2006/chart";
const BAR = "6B8F7E";
const INK = "2F3E46";
const HAIRLINE = "D5D8DA";

/** Where the chart lies on its sheet. */
export function drawingPart({ over, title }: BarChart): string {
  const area = readArea(over);
  if (!area) throw new Error(`${over} is no range for a chart to cover`);
  const corner = (name: string, row: number, column: number): string =>
    `<xdr:${name}><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:${name}>`;
  return [
    `<xdr:wsDr xmlns:xdr="http://schemas.openxmlformats.org/drawingml/2006/spreadsheetDrawing" xmlns:a="${DRAWING}">`,
    "<xdr:twoCellAnchor>",
    corner("from", area.top - 1, area.left - 1),
    corner("to", area.bottom, area.right),
    `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="2" name="${encodeAttribute(title)}" descr="${encodeAttribute(title)}"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr>`,
    '<xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>',
    `<a:graphic><a:graphicData uri="${CHART}"><c:chart xmlns:c="${CHART}" xmlns:r="${RELATIONSHIPS}" r:id="rId1"/></a:graphicData></a:graphic>`,
    "</xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor></xdr:wsDr>",
  ].join("");
}

/** Horizontal bars, one for each row of the range, the first at the top. */
export function chartPart(chart: BarChart, sheet: Sheet, cells: readonly ValuedCell[]): string {
  return [
    `<c:chartSpace xmlns:c="${CHART}" xmlns:a="${DRAWING}" xmlns:r="${RELATIONSHIPS}"><c:roundedCorners val="0"/><c:chart>`,
    `<c:title><c:tx><c:rich><a:bodyPr/><a:p><a:pPr><a:defRPr sz="1200" b="1"/></a:pPr><a:r><a:rPr lang="en" sz="1200" b="1">${solid(INK)}</a:rPr><a:t>${encodeText(chart.title)}</a:t></a:r></a:p></c:rich></c:tx><c:overlay val="0"/></c:title>`,
    '<c:autoTitleDeleted val="0"/><c:plotArea><c:layout/><c:barChart><c:barDir val="bar"/><c:grouping val="clustered"/><c:varyColors val="0"/>',
    `<c:ser><c:idx val="0"/><c:order val="0"/><c:tx><c:v>${encodeText(chart.title)}</c:v></c:tx><c:spPr>${solid(BAR)}</c:spPr><c:invertIfNegative val="0"/>`,
    `<c:cat>${cached("str", chart.categories, sheet, cells)}</c:cat><c:val>${cached("num", chart.values, sheet, cells, formats[chart.format])}</c:val></c:ser>`,
    '<c:gapWidth val="45"/><c:axId val="1"/><c:axId val="2"/></c:barChart>',
    `<c:catAx><c:axId val="1"/><c:scaling><c:orientation val="maxMin"/></c:scaling><c:delete val="0"/><c:axPos val="l"/><c:numFmt formatCode="General" sourceLinked="0"/><c:majorTickMark val="none"/><c:minorTickMark val="none"/><c:tickLblPos val="nextTo"/><c:spPr>${hairline}</c:spPr>${small}<c:crossAx val="2"/><c:crosses val="autoZero"/><c:auto val="1"/><c:lblAlgn val="ctr"/><c:lblOffset val="100"/><c:noMultiLvlLbl val="0"/></c:catAx>`,
    `<c:valAx><c:axId val="2"/><c:scaling><c:orientation val="minMax"/><c:min val="0"/></c:scaling><c:delete val="0"/><c:axPos val="b"/><c:majorGridlines><c:spPr>${hairline}</c:spPr></c:majorGridlines><c:numFmt formatCode="${formats[chart.format]}" sourceLinked="0"/><c:majorTickMark val="none"/><c:minorTickMark val="none"/><c:tickLblPos val="nextTo"/><c:spPr><a:ln><a:noFill/></a:ln></c:spPr>${small}<c:crossAx val="1"/><c:crosses val="max"/><c:crossBetween val="between"/></c:valAx>`,
    `</c:plotArea><c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/></c:chart><c:spPr><a:solidFill><a:srgbClr val="FFFFFF"/></a:solidFill>${hairline}</c:spPr></c:chartSpace>`,
  ].join("");
}

const solid = (colour: string): string => `<a:solidFill><a:srgbClr val="${colour}"/></a:solidFill>`;
const hairline = `<a:ln w="9525">${solid(HAIRLINE)}</a:ln>`;
const small = `<c:txPr><a:bodyPr/><a:p><a:pPr><a:defRPr sz="900">${solid(INK)}</a:defRPr></a:pPr><a:endParaRPr lang="en"/></a:p></c:txPr>`;

/** A reference with the values that a reader shows before it computes. */
function cached(kind: "str" | "num", range: string, sheet: Sheet, cells: readonly ValuedCell[], code?: string): string {
  const area = readArea(range);
  if (!area) throw new Error(`${range} is no range for a chart to read`);
  const points = cells.filter((cell) => isInside(cell, area)).map(({ value }, i) => `<c:pt idx="${i}"><c:v>${encodeText(String(value))}</c:v></c:pt>`);
  const absolute = range.replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");
  return `<c:${kind}Ref><c:f>${quoted(sheet.name)}!${absolute}</c:f><c:${kind}Cache>${code ? `<c:formatCode>${code}</c:formatCode>` : ""}<c:ptCount val="${points.length}"/>${points.join("")}</c:${kind}Cache></c:${kind}Ref>`;
}
