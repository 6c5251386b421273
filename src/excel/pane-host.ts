import { REFERENCE_PAGE } from "../catalogue/reference-address";
import type { HostColours, PaneHost } from "../pane/pane-host";
import { officePort } from "../workbook/office";
import { excelFiles } from "./files";

export async function excelPaneHost(): Promise<PaneHost> {
  const decimal = await decimalSeparator();
  return {
    port: officePort(),
    files: excelFiles(),
    decimal,
    // Excel lists with semicolons where the comma is taken.
    separator: decimal === "," ? ";" : ",",
    tableReferences: true,
    referencePage: REFERENCE_PAGE,
    ...(opensBrowser() ? { openInBrowser: (address) => Office.context.ui.openBrowserWindow(address) } : {}),
    ...(excelColours() ? { onColours: tellColours } : {}),
  };
}

/** Excel on a desktop does; on the web a link opens a tab. */
const opensBrowser = (): boolean => Office.context.requirements.isSetSupported("OpenBrowserWindowApi", "1.1");

async function decimalSeparator(): Promise<"." | ","> {
  if (!Office.context.requirements.isSetSupported("ExcelApi", "1.11")) return ".";
  return Excel.run(async (context) => {
    const application = context.application.load("decimalSeparator");
    await context.sync();
    return application.decimalSeparator === "," ? "," : ".";
  });
}

/** Excel on the web tells no theme. */
function excelColours(): HostColours | null {
  const theme = (Office.context as Partial<Office.Context>).officeTheme;
  return theme ? { ground: theme.bodyBackgroundColor, text: theme.bodyForegroundColor } : null;
}

/** Excel sends no word when its theme changes, so it is asked again whenever the user comes to the pane. */
function tellColours(listener: (colours: HostColours) => void): () => void {
  const tell = (): void => {
    const colours = excelColours();
    if (colours) listener(colours);
  };
  tell();
  window.addEventListener("focus", tell);
  return () => window.removeEventListener("focus", tell);
}
