import { EsbuildPlugin } from "esbuild-loader";
import type { Configuration } from "webpack";
import { inRepository } from "../excel-files";
import { HostFiles, copiedFiles } from "../host-files";
import { Licences } from "../licences/licences-plugin";
import { base } from "./base";

/** The page of the embedded local workbook. */
export const host: Configuration = {
  ...base,
  name: "host",
  entry: { host: inRepository("src/host/main.ts") },
  output: { path: inRepository("dist/host"), filename: "[name].js", chunkFilename: "[name].js", module: true, clean: true },
  experiments: { outputModule: true },
  // The grid and its framework are under the LGPL: they stay files of their own, which anyone may put another version of in place of ours.
  externalsType: "module",
  externals: ["@odoo/o-spreadsheet", "@odoo/owl"],
  // Told the format, or it would make a script of the module.
  optimization: { minimizer: [new EsbuildPlugin({ target: "es2020", format: "esm", legalComments: "inline" })] },
  plugins: [new HostFiles(), new Licences(copiedFiles)],
};
