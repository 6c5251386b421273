/** The grid groups its commands by a function that Node 20 lacks. */
export function provideGroupBy(): void {
  if (!("groupBy" in Object)) Object.defineProperty(Object, "groupBy", { value: groupBy, configurable: true, writable: true });
}

function groupBy<T>(items: Iterable<T>, keyOf: (item: T, index: number) => PropertyKey): Partial<Record<PropertyKey, T[]>> {
  const groups: Partial<Record<PropertyKey, T[]>> = Object.create(null);
  let index = 0;
  for (const item of items) (groups[keyOf(item, index++)] ??= []).push(item);
  return groups;
}
