import { seriesColour } from "../chart-colours";
import type { Chart } from "../port";

/** A chart of Excel's own on a sheet that is added; it goes with the sheet. */
export function addChart(sheet: Excel.Worksheet, { kind, title, at, width, height, categories, series, numberFormat }: Chart): void {
  const [first] = series;
  if (!first) return;
  const chart = sheet.charts.add(kind === "lines" ? "LineMarkers" : "ColumnClustered", sheet.getRange(first.values), "Columns");
  chart.title.text = title;
  chart.legend.visible = series.length > 1;
  chart.legend.position = "Bottom";
  chart.axes.valueAxis.numberFormat = numberFormat;
  // Where the axis crosses the numbers below zero, its words stay at the edge.
  chart.axes.categoryAxis.tickLabelPosition = "Low";
  series.forEach(({ name, values }, i) => {
    const one = i === 0 ? chart.series.getItemAt(0) : chart.series.add(name);
    one.name = name;
    one.setValues(sheet.getRange(values));
    one.setXAxisValues(sheet.getRange(categories));
    one.format.fill.setSolidColor(`#${seriesColour(i)}`);
    one.format.line.color = `#${seriesColour(i)}`;
  });
  chart.setPosition(at);
  chart.width = width * 0.75;
  chart.height = height * 0.75;
}
