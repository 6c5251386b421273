import type { Configuration } from "webpack";
import { inRepository } from "../excel-files";
import { Licences } from "../licences/licences-plugin";
import { base } from "./base";

/** The functions' start-up, and the pane's code that it loads when the pane is shown. */
export const excel: Configuration = {
  ...base,
  name: "excel",
  entry: { start: inRepository("src/excel/start.ts") },
  output: {
    path: inRepository("dist/excel"),
    // The manifest names start.js. The other names change with their content, so that no stale one is taken for new.
    filename: "[name].js",
    chunkFilename: "[name].[contenthash:12].js",
    clean: true,
  },
  plugins: [new Licences()],
  // What several tasks share is a piece of its own: copied into each of them it would come to a seventh more.
  optimization: { ...base.optimization, splitChunks: { minSize: 3000 } },
};
