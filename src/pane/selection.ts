import type { BookPort, Place } from "../workbook/port";

export interface Selected {
  readonly sheet: string;
  readonly range: string;
  /** Its first cell: where an insertion goes. */
  readonly cell: string;
}

/** Tells the selection at once and whenever it changes; a sentence where it cannot be seen. */
export function followSelection(port: BookPort, listener: (selected: Selected | string) => void): () => void {
  let isFollowed = true;
  let hasMoved = false;
  const stop = port.onSelection((place) => {
    hasMoved = true;
    listener(selected(place));
  });
  const tell = (said: Selected | string): void => {
    if (isFollowed && !hasMoved) listener(said);
  };
  port.selection().then(
    (place) => tell(selected(place)),
    (thrown: unknown) => tell(`Cannot see which cell is selected: ${thrown instanceof Error ? thrown.message : String(thrown)}`),
  );
  return () => {
    isFollowed = false;
    stop();
  };
}

const selected = ({ sheet, range }: Place): Selected => ({ sheet, range, cell: range.split(":")[0] ?? range });
