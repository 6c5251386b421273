/** Each thing once, with its place in the list as its number. */
export class Listed<T> {
  readonly #places: Map<T, number>;

  constructor(first: readonly T[]) {
    this.#places = new Map(first.map((item, i) => [item, i]));
  }

  of(item: T): number {
    const place = this.#places.get(item) ?? this.#places.size;
    this.#places.set(item, place);
    return place;
  }

  get all(): T[] {
    return [...this.#places.keys()];
  }
}
