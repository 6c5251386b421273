import { fileURLToPath } from "node:url";
import { HostFiles } from "./host-files.mjs";

const inRepository = (path) => fileURLToPath(new URL(`../../${path}`, import.meta.url));

/** The page of the embedded local workbook. */
export const hostConfig = {
  name: "host",
  mode: "production",
  target: ["web", "es2022"],
  entry: { host: inRepository("src/host/main.ts") },
  output: { path: inRepository("dist/host"), filename: "[name].js", chunkFilename: "[name].js", module: true, clean: true },
  experiments: { outputModule: true },
  // The grid and its framework are under the LGPL: they stay files of their own, which anyone may put another version of in place of ours.
  externalsType: "module",
  externals: ["@odoo/o-spreadsheet", "@odoo/owl"],
  resolve: { extensions: [".ts", ".js", ".json"] },
  module: { rules: [{ test: /\.ts$/, loader: "esbuild-loader", options: { target: "es2022" } }] },
  plugins: [new HostFiles()],
  performance: { hints: false },
};

export default [hostConfig];
