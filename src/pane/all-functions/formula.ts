import { type Argument, readArgument, writtenItem, writtenList } from "../argument";
import { writtenRange } from "../../workbook/cell-range";
import { type Notation, portNotation, writtenText } from "../notation";

/** The formula for a cell of a sheet, without the arguments at its end that are left out. */
export function formulaOf(name: string, given: readonly Argument[], notation: Notation, sheet: string | null): string {
  const count = given.reduce((last, { kind }, i) => (kind === "nothing" ? last : i + 1), 0);
  const written = given.slice(0, count).map((argument) => writtenArgument(argument, notation, sheet));
  return `=${name}(${written.join(notation.separator)})`;
}

function writtenArgument(argument: Argument, notation: Notation, sheet: string | null): string {
  switch (argument.kind) {
    case "nothing":
      return "";
    case "value":
      return writtenItem(argument.value, notation);
    case "date":
      return argument.written(notation);
    case "list":
      return writtenList(argument.rows, notation);
    case "cells":
      return writtenRange(argument.range, sheet);
    case "unreadable":
      return "?";
  }
}

/** What one types in a field for an argument that stands in a formula. */
export function fieldText(written: string, notation: Notation, choices: readonly string[] = []): string {
  const argument = readArgument(written, portNotation);
  if (argument.kind === "list") return writtenList(argument.rows, notation);
  if (argument.kind !== "value") return written;
  if (typeof argument.value === "number") return writtenItem(argument.value, notation);
  const bare = readArgument(argument.value, notation, choices);
  return bare.kind === "value" && bare.value === argument.value ? argument.value : writtenText(argument.value);
}
