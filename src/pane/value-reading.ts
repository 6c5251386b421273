import { isOneCell, writtenRange } from "../workbook/cell-range";
import type { BookPort } from "../workbook/port";
import { areaText } from "../workbook/xlsx/address";
import { readArgument } from "./argument";
import type { Notation } from "./notation";

export interface ValueReading {
  /** What was typed, or what the cell holds that was named; null where nothing was. */
  read(text: string): Promise<{ readonly value: number | string } | { readonly fault: string } | null>;
  /** The cell from which a text's value came, with its sheet; null where it came from none. */
  lastCell(text: string): string | null;
}

/** Reads fields into which a number, a text or one cell of the workbook can be written. */
export function readingValues(notation: Notation, port: BookPort): ValueReading {
  const cells = new Map<string, string>();
  return {
    async read(text) {
      const argument = readArgument(text, notation);
      if (argument.kind === "nothing") return null;
      if (argument.kind === "value") return { value: argument.value };
      if (argument.kind === "unreadable") return { fault: argument.sentence };
      if (argument.kind !== "cells" || !isOneCell(argument.range)) return { fault: `Cannot read ${text}: write a number, or one cell that holds it, such as Prices!B4` };
      const sheet = argument.range.sheet ?? (await port.selection()).sheet;
      const written = writtenRange({ ...argument.range, sheet }, null);
      const reading = await port.read({ sheet, range: areaText(argument.range.area) }).then((rows) => rows[0]?.[0] ?? null, () => null);
      if (!reading) return { fault: `Cannot find ${written} in this workbook` };
      if (reading.error) return { fault: `${written} shows ${String(reading.value)}: mend that cell first` };
      if (typeof reading.value !== "number" && (typeof reading.value !== "string" || reading.value === "")) return { fault: `${written} is empty: name a cell that holds it` };
      cells.set(text, written);
      return { value: reading.value };
    },
    lastCell: (text) => cells.get(text) ?? null,
  };
}
