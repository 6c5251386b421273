/** What a picture is drawn in. Each is a colour as SVG takes it. */
export interface PictureColours {
  readonly text: string;
  readonly muted: string;
  /** Lines of the scale, which stay in the background. */
  readonly line: string;
  /** Outlines of things. */
  readonly edge: string;
  readonly accent: string;
  /** Areas that carry dark text. */
  readonly area: string;
  readonly caution: string;
}

/** In the pane: its own theme. `pane.css` gives them in forced colours. */
export const paneColours: PictureColours = {
  text: "var(--picture-text)",
  muted: "var(--picture-muted)",
  line: "var(--picture-line)",
  edge: "var(--picture-edge)",
  accent: "var(--picture-accent)",
  area: "var(--picture-area)",
  caution: "var(--picture-caution)",
};

/** In a sheet, which is white paper for whoever opens it. */
export const sheetColours: PictureColours = {
  text: "#1c2024",
  muted: "#545b64",
  line: "#d9d8d5",
  edge: "#83898f",
  accent: "#914719",
  area: "#ecd9c9",
  caution: "#a87a12",
};
