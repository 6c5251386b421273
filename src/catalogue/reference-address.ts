/** The reference page lies beside the page of each host under this name. */
export const REFERENCE_PAGE = "reference.html";

export type Decimal = "." | ",";

/** A decimal sign by its name, as the page and its address call it. */
export const decimalNames: Readonly<Record<Decimal, string>> = { ".": "point", ",": "comma" };

/**
 * Where a function stands, to be put after the page's own address: #COPPER. With a decimal sign the page writes its
 * examples as such a spreadsheet takes them, ?decimal=comma#COPPER; without one as the browser's language has it.
 */
export const referencePlace = (id: string | null, decimal?: Decimal): string =>
  (decimal === undefined ? "" : `?decimal=${decimalNames[decimal]}`) + (id === null ? "" : `#${id}`);

/** The sign that an address asks for; null where it asks for none that we know. */
export function decimalIn(query: string): Decimal | null {
  const asked = new URLSearchParams(query).get("decimal");
  return asked === decimalNames["."] ? "." : asked === decimalNames[","] ? "," : null;
}
