import type { BookPort } from "../workbook/port";

/** Colours as CSS writes them: "#ffffff". */
export interface HostColours {
  readonly ground: string;
  readonly text: string;
}

/** The workbook's own file, and a way to hand over another. */
export interface PaneFiles {
  /** As it would be saved now. */
  current(): Promise<{ readonly name: string; readonly bytes: Uint8Array }>;
  /** Says where the file went: "look for it among your downloads". */
  handOver(name: string, bytes: Uint8Array): Promise<string>;
}

/** What the pane needs of the spreadsheet it stands beside. */
export interface PaneHost {
  readonly port: BookPort;
  /** How this user's spreadsheet shows a formula; the port takes formulas in en-US form whatever these say. */
  readonly separator: "," | ";";
  readonly decimal: "." | ",";
  readonly files: PaneFiles;
  /** Its formulas may name the columns of a table, as in Lots[[#This Row],[Net]]. */
  readonly tableReferences?: boolean;
  /** Where the reference page lies; links to it are shown when there is one. */
  readonly referencePage?: string;
  /** Opens an address in the user's browser, where a plain link would open it in the pane. */
  openInBrowser?(address: string): void;
  /** Tells the host's own colours at once and whenever they change; without it the pane follows the system. */
  onColours?(listener: (colours: HostColours) => void): () => void;
}
