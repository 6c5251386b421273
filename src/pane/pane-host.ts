import type { WorkbookPort } from "../workbook/port";

/** Colours as CSS writes them: "#ffffff". */
export interface HostColours {
  readonly ground: string;
  readonly text: string;
}

/** What the pane needs of the spreadsheet it stands beside. */
export interface PaneHost {
  readonly port: WorkbookPort;
  /** How this user's spreadsheet shows a formula; the port takes formulas in en-US form whatever these say. */
  readonly separator: "," | ";";
  readonly decimal: "." | ",";
  /** The reference page; a link to it is shown when there is one. */
  readonly helpUrl?: string;
  /** Tells the host's own colours at once and whenever they change; without it the pane follows the system. */
  onColours?(listener: (colours: HostColours) => void): () => void;
}
