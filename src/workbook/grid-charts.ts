import { helpers, type UID } from "@odoo/o-spreadsheet";
import type { Step } from "../engine/steps";
import { seriesColour } from "./chart-colours";
import type { Chart } from "./port";

/** A chart of ours among the grid's own. */
export function chartStep(sheetId: UID, sheet: string, figureId: UID, { kind, title, at, width, height, categories, series }: Chart): Step {
  const onSheet = (range: string): string => `'${sheet.replaceAll("'", "''")}'!${range}`;
  const ids = series.map((_, i) => `${figureId}-${i}`);
  const common = {
    title: { text: title },
    legendPosition: series.length > 1 ? ("bottom" as const) : ("none" as const),
    dataSource: { type: "range" as const, dataSets: series.map(({ values }, i) => ({ dataSetId: ids[i] ?? "", dataRange: onSheet(values) })), dataSetsHaveTitle: false, labelRange: onSheet(categories) },
    dataSetStyles: Object.fromEntries(series.map(({ name }, i) => [ids[i] ?? "", { label: name, backgroundColor: `#${seriesColour(i)}` }])),
  };
  return {
    type: "CREATE_CHART",
    sheetId,
    figureId,
    chartId: figureId,
    ...helpers.toCartesian(at.replaceAll("$", "").toUpperCase()),
    offset: { x: 0, y: 0 },
    size: { width, height },
    definition: kind === "lines" ? { ...common, type: "line", labelsAsText: true, stacked: false, cumulative: false } : { ...common, type: "bar", stacked: false },
  };
}
