import type { Chart } from "../workbook/port";
import type { ChartRanges } from "./months-block";

const SIZE = { width: 520, height: 260 };

/** The months so far as charts, at the right of what is printed. */
export function monthCharts({ rows, month, throughput, recovery, recoveryLow, recoveryHigh, running }: ChartRanges): Chart[] {
  const column = (letter: string): string => `${letter}${rows.first}:${letter}${rows.last}`;
  const categories = column(month);
  return [
    { kind: "columns", title: "Throughput, ozt", at: "L4", ...SIZE, categories, series: [{ name: "Throughput", values: column(throughput) }], numberFormat: "#,##0" },
    {
      kind: "lines",
      title: "Recovery, with its limits (k = 2)",
      at: "L19",
      ...SIZE,
      categories,
      series: [{ name: "Recovery", values: column(recovery) }, { name: "Low", values: column(recoveryLow) }, { name: "High", values: column(recoveryHigh) }],
      numberFormat: "0.0%",
    },
    { kind: "lines", title: "Unaccounted metal, running, ozt", at: "L34", ...SIZE, categories, series: [{ name: "Running", values: column(running) }], numberFormat: "0.00" },
  ];
}
