import type { HostColours, PaneHost } from "../pane/pane-host";
import { officePort } from "../workbook/office";

export async function excelPaneHost(): Promise<PaneHost> {
  const decimal = await decimalSeparator();
  const colours = excelColours();
  return {
    port: officePort(),
    decimal,
    // Excel lists with semicolons where the comma is taken.
    separator: decimal === "," ? ";" : ",",
    helpUrl: "reference.html",
    ...(colours ? { onColours: (listener) => tell(listener, colours) } : {}),
  };
}

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

/** Excel loads its add-ins anew when its theme changes, so what it tells once stays true. */
function tell(listener: (colours: HostColours) => void, colours: HostColours): () => void {
  listener(colours);
  return () => {};
}
