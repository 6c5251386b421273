/** What can go wrong, as data. One function writes the sentence, one chooses the spreadsheet's error. */
export type Fault =
  /** A value that its argument cannot take. */
  | { readonly kind: "unfit"; readonly name: string; readonly got: string; readonly wants: string }
  /** Something that could be read in more than one way. `write` says how to write it. */
  | { readonly kind: "ambiguous"; readonly name: string; readonly got: string; readonly because: string; readonly write: string }
  | { readonly kind: "missing"; readonly name: string; readonly wants: string }
  | { readonly kind: "unknown-name"; readonly name: string; readonly got: string; readonly known: readonly string[]; readonly form?: string }
  /** A thing that is still to be supplied before there can be an answer. */
  | { readonly kind: "awaited"; readonly name: string; readonly needs: string }
  | { readonly kind: "half-filled"; readonly row: number; readonly names: readonly string[] }
  | { readonly kind: "shapes-differ"; readonly first: string; readonly second: string; readonly shapes: readonly [string, string] }
  /** Arguments that are each right but do not go together. */
  | { readonly kind: "conflict"; readonly names: readonly string[]; readonly because: string; readonly write: string }
  | { readonly kind: "zero-divisor" }
  | { readonly kind: "not-finite"; readonly what: string };

export class FaultError extends Error {
  constructor(readonly fault: Fault) {
    super(sentence(fault));
    this.name = "FaultError";
  }
}

export const fail = (fault: Fault): never => {
  throw new FaultError(fault);
};

/** Excel shows a message with these two alone. */
export type ErrorCode = "#VALUE!" | "#N/A";

export function errorCode(fault: Fault): ErrorCode {
  return fault.kind === "unknown-name" || fault.kind === "awaited" ? "#N/A" : "#VALUE!";
}

export function sentence(fault: Fault): string {
  switch (fault.kind) {
    case "unfit":
      return `Cannot use ${fault.name} = ${fault.got}: it must be ${fault.wants}`;
    case "ambiguous":
      return `Cannot use ${fault.name} = ${fault.got}: ${fault.because}: write ${fault.write}`;
    case "missing":
      return `Cannot compute without ${fault.name}: it is empty and must be ${fault.wants}`;
    case "unknown-name":
      return `Cannot find ${fault.name} = ${fault.got}: write ${fault.form ? `${fault.form}, or ` : ""}one of ${listed(fault.known)}`;
    case "awaited":
      return `Cannot compute yet: ${fault.name} is still to come: ${fault.needs}`;
    case "half-filled":
      return `Cannot use row ${fault.row} of the range: ${fault.names.join(" and ")} ${fault.names.length > 1 ? "are" : "is"} empty there: fill the row or empty it wholly`;
    case "shapes-differ":
      return `Cannot pair ${fault.first} with ${fault.second}: one is ${fault.shapes[0]}, the other ${fault.shapes[1]} (rows × columns): give ranges of one shape`;
    case "conflict":
      return `Cannot use ${fault.names.join(" with ")}: ${fault.because}: ${fault.write}`;
    case "zero-divisor":
      return "Cannot divide by zero: give amounts that leave something to divide by";
    case "not-finite":
      return `Cannot show ${fault.what}: it is too large for a spreadsheet number`;
  }
}

/** A list that stays readable in a message. */
const listed = (names: readonly string[]): string =>
  names.length > 12 ? `${names.slice(0, 8).join(", ")}, …` : names.join(", ");

/** A value as it is quoted in a message: short, so that a message stays readable. */
export function quoted(value: unknown): string {
  if (typeof value === "number" && Number.isNaN(value)) return "no number";
  if (typeof value === "number" || typeof value === "boolean") return String(value);
  if (typeof value === "object" && value !== null) return "a range";
  if (value === null || value === undefined) return "nothing";
  const text = String(value);
  return text.length > 40 ? `"${text.slice(0, 37)}…"` : `"${text}"`;
}
