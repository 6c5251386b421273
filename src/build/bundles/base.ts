import { EsbuildPlugin } from "esbuild-loader";
import type { Configuration } from "webpack";

/** What a page's bundle needs, whichever page it is. Exact arithmetic needs BigInt, so nothing older is served. */
const TARGET = "es2020";

export const base: Configuration = {
  mode: "production",
  target: ["web", TARGET],
  devtool: false,
  module: {
    parser: { json: { namedExports: true } },
    rules: [{ test: /\.ts$/, loader: "esbuild-loader", options: { target: TARGET } }],
  },
  resolve: { extensions: [".ts", ".js"] },
  optimization: { minimizer: [new EsbuildPlugin({ target: TARGET, legalComments: "inline" })] },
  // tests/office holds the sizes.
  performance: false,
};
