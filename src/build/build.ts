/** npm run build -- --base https://example.org/lotwright/ */
import { parseArgs } from "node:util";
import { logErrorMessage } from "office-addin-cli";
import bundles from "../../webpack.config";
import { baseAddress } from "./base-address";
import { bundle } from "./bundle";
import { DEVELOPMENT_BASE, inRepository } from "./excel-files";
import { fillExcelFolder } from "./excel-folder";

try {
  const { values } = parseArgs({ options: { base: { type: "string", default: DEVELOPMENT_BASE } } });
  const base = baseAddress(values.base);
  for (const configuration of bundles) await bundle(configuration);
  fillExcelFolder(inRepository("dist/excel"), base);
  console.log(`dist/excel is ready to be served at ${base}\nIts manifest is dist/excel/manifest.xml.`);
} catch (error) {
  logErrorMessage(error);
  process.exitCode = 1;
}
