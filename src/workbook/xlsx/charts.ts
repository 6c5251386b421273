import { seriesColour } from "../chart-colours";
import type { Chart } from "../port";
import { areaText, isInside, readAddress, readArea } from "./address";
import type { AddedCell } from "./change";
import { prefixOf } from "./children";
import type { Draft } from "./draft";
import { relationshipTypes } from "./package";
import { addDrawing, freeNumber, PER_PIXEL, SHAPES } from "./pictures";
import { edited } from "./xml-edits";
import { encodeAttribute, encodeText } from "./xml-text";
import { appending, rootOf } from "./xml-tree";

const CHART = "http://schemas.openxmlformats.org/drawingml/2006/chart";
const CHART_TYPE = "application/vnd.openxmlformats-officedocument.drawingml.chart+xml";
const [INK, HAIRLINE] = ["2F3E46", "D5D8DA"];

/** Puts a chart on a sheet that is added, with the values that a reader shows before it computes. */
export function addChart(draft: Draft, sheet: string, folder: string, name: string, chart: Chart, cells: readonly AddedCell[], isStrict: boolean): void {
  const drawing = draft.related(sheet, "drawing") ?? addDrawing(draft, sheet, folder, isStrict);
  const part = draft.freePart(`${folder}charts/`, "chart", "xml");
  const id = draft.add(part, chartXml(name, chart, cells), CHART_TYPE, drawing, "chart");
  const xml = draft.text(drawing);
  draft.write(drawing, edited(xml, [appending(rootOf(xml), anchor(xml, chart, id, isStrict))]));
}

function anchor(xml: string, { at, width, height, title }: Chart, id: string, isStrict: boolean): string {
  const x = prefixOf(xml);
  const { row, column } = readAddress(at) ?? { row: 1, column: 1 };
  const number = freeNumber(xml);
  return (
    `<${x}oneCellAnchor><${x}from><${x}col>${column - 1}</${x}col><${x}colOff>0</${x}colOff><${x}row>${row - 1}</${x}row><${x}rowOff>0</${x}rowOff></${x}from><${x}ext cx="${Math.round(width * PER_PIXEL)}" cy="${Math.round(height * PER_PIXEL)}"/>` +
    `<${x}graphicFrame macro=""><${x}nvGraphicFramePr><${x}cNvPr id="${number}" name="Chart ${number}" descr="${encodeAttribute(title)}"/><${x}cNvGraphicFramePr/></${x}nvGraphicFramePr>` +
    `<${x}xfrm><a:off xmlns:a="${SHAPES}" x="0" y="0"/><a:ext xmlns:a="${SHAPES}" cx="0" cy="0"/></${x}xfrm>` +
    `<a:graphic xmlns:a="${SHAPES}"><a:graphicData uri="${CHART}"><c:chart xmlns:c="${CHART}" xmlns:r="${relationshipTypes(isStrict).slice(0, -1)}" r:id="${id}"/></a:graphicData></a:graphic>` +
    `</${x}graphicFrame><${x}clientData/></${x}oneCellAnchor>`
  );
}

function chartXml(sheet: string, chart: Chart, cells: readonly AddedCell[]): string {
  const isLines = chart.kind === "lines";
  const series = chart.series.map(({ name, values }, i) => {
    const colour = solid(seriesColour(i));
    const look = isLines ? `<c:spPr><a:ln w="25400">${colour}</a:ln></c:spPr><c:marker><c:symbol val="circle"/><c:size val="5"/><c:spPr>${colour}</c:spPr></c:marker>` : `<c:spPr>${colour}</c:spPr><c:invertIfNegative val="0"/>`;
    return `<c:ser><c:idx val="${i}"/><c:order val="${i}"/><c:tx><c:v>${encodeText(name)}</c:v></c:tx>${look}<c:cat>${cached("str", chart.categories, sheet, cells)}</c:cat><c:val>${cached("num", values, sheet, cells, chart.numberFormat)}</c:val>${isLines ? '<c:smooth val="0"/>' : ""}</c:ser>`;
  });
  const plot = isLines
    ? `<c:lineChart><c:grouping val="standard"/><c:varyColors val="0"/>${series.join("")}<c:marker val="1"/><c:axId val="1"/><c:axId val="2"/></c:lineChart>`
    : `<c:barChart><c:barDir val="col"/><c:grouping val="clustered"/><c:varyColors val="0"/>${series.join("")}<c:gapWidth val="60"/><c:axId val="1"/><c:axId val="2"/></c:barChart>`;
  return [
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<c:chartSpace xmlns:c="${CHART}" xmlns:a="${SHAPES}"><c:roundedCorners val="0"/><c:chart>`,
    `<c:title><c:tx><c:rich><a:bodyPr/><a:p><a:pPr><a:defRPr sz="1200" b="1"/></a:pPr><a:r><a:rPr lang="en" sz="1200" b="1">${solid(INK)}</a:rPr><a:t>${encodeText(chart.title)}</a:t></a:r></a:p></c:rich></c:tx><c:overlay val="0"/></c:title>`,
    `<c:autoTitleDeleted val="0"/><c:plotArea><c:layout/>${plot}`,
    `<c:catAx><c:axId val="1"/><c:scaling><c:orientation val="minMax"/></c:scaling><c:delete val="0"/><c:axPos val="b"/><c:numFmt formatCode="General" sourceLinked="0"/><c:majorTickMark val="none"/><c:minorTickMark val="none"/><c:tickLblPos val="low"/><c:spPr>${LINE}</c:spPr>${SMALL}<c:crossAx val="2"/><c:crosses val="autoZero"/><c:auto val="0"/><c:lblAlgn val="ctr"/><c:lblOffset val="100"/><c:noMultiLvlLbl val="0"/></c:catAx>`,
    `<c:valAx><c:axId val="2"/><c:scaling><c:orientation val="minMax"/></c:scaling><c:delete val="0"/><c:axPos val="l"/><c:majorGridlines><c:spPr>${LINE}</c:spPr></c:majorGridlines><c:numFmt formatCode="${encodeAttribute(chart.numberFormat)}" sourceLinked="0"/><c:majorTickMark val="none"/><c:minorTickMark val="none"/><c:tickLblPos val="nextTo"/><c:spPr><a:ln><a:noFill/></a:ln></c:spPr>${SMALL}<c:crossAx val="1"/><c:crosses val="autoZero"/><c:crossBetween val="between"/></c:valAx>`,
    `</c:plotArea>${chart.series.length > 1 ? `<c:legend><c:legendPos val="b"/><c:overlay val="0"/></c:legend>` : ""}<c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/></c:chart><c:spPr><a:solidFill><a:srgbClr val="FFFFFF"/></a:solidFill>${LINE}</c:spPr></c:chartSpace>`,
  ].join("");
}

const solid = (colour: string | undefined): string => `<a:solidFill><a:srgbClr val="${colour ?? INK}"/></a:solidFill>`;
const LINE = `<a:ln w="9525">${solid(HAIRLINE)}</a:ln>`;
const SMALL = `<c:txPr><a:bodyPr/><a:p><a:pPr><a:defRPr sz="900">${solid(INK)}</a:defRPr></a:pPr><a:endParaRPr lang="en"/></a:p></c:txPr>`;

function cached(kind: "str" | "num", range: string, sheet: string, cells: readonly AddedCell[], code?: string): string {
  const area = readArea(range);
  if (!area) return "";
  const inside = cells.flatMap(({ cell, value, error }) => {
    const spot = readAddress(cell);
    return spot && isInside(spot, area) && !error && (kind === "str" || typeof value === "number") ? [{ at: spot.row - area.top, value }] : [];
  });
  const points = inside.sort((a, b) => a.at - b.at).map(({ at, value }) => `<c:pt idx="${at}"><c:v>${encodeText(String(value ?? ""))}</c:v></c:pt>`);
  const fixed = areaText(area).replace(/([A-Z]+)(\d+)/g, "$$$1$$$2");
  return `<c:${kind}Ref><c:f>${encodeText(`'${sheet.replaceAll("'", "''")}'!${fixed}`)}</c:f><c:${kind}Cache>${code === undefined ? "" : `<c:formatCode>${encodeText(code)}</c:formatCode>`}<c:ptCount val="${area.bottom - area.top + 1}"/>${points.join("")}</c:${kind}Cache></c:${kind}Ref>`;
}
