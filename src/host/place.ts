/** A cell's sheet and address as one text. */
export const placeOf = (sheet: string, address: string): string => `${sheet}!${address}`;

/** An address holds no exclamation mark, a sheet's name may. */
export function addressOf(place: string): { sheet: string; cell: string } {
  const mark = place.lastIndexOf("!");
  return { sheet: place.slice(0, mark), cell: place.slice(mark + 1) };
}
