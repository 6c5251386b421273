/** In which the series of a chart follow each other, as RRGGBB; told apart by their lightness too. */
export const SERIES_COLOURS = ["914719", "6B8F7E", "3C5A78", "B08A2E"] as const;

export const seriesColour = (index: number): string => SERIES_COLOURS[index % SERIES_COLOURS.length] ?? SERIES_COLOURS[0];
