/** npm run excel: builds the add-in, serves it to Excel on this machine, and says how to load it. */
import { createServer } from "node:https";
import { join } from "node:path";
import { logErrorMessage } from "office-addin-cli";
import { bundle } from "./bundle";
import { excel } from "./bundles/excel";
import { developmentCertificate } from "./certificate";
import { inRepository } from "./excel-files";
import { fillExcelFolder } from "./excel-folder";
import { loadingHelp } from "./loading";
import { listen, portOf } from "./port";
import { serveFolder } from "./serve-folder";

try {
  const port = portOf(process.env["PORT"], 3000);
  const base = `https://localhost:${port}/`;
  const folder = inRepository("dist/excel");
  const server = createServer(serveFolder(folder));
  // A port that is taken is told before the system asks whether it shall trust a certificate.
  await listen(server, port);
  const { advice, ...certificate } = await developmentCertificate();
  await bundle(excel);
  fillExcelFolder(folder, base);
  server.setSecureContext(certificate);
  if (advice) console.error(`\n${advice}`);
  console.log(`\n${loadingHelp(join(folder, "manifest.xml"))}\n\nServing at ${base} until you press Ctrl+C.`);
} catch (error) {
  logErrorMessage(error);
  process.exit(1);
}
