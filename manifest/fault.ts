/** What the manifest must agree with. */
export interface Surroundings {
  /** The version in package.json, three numbers. */
  readonly version: string;
  /** Where the add-in is served, with the slash at its end. */
  readonly base: string;
  /** A file that is served there, by its name; null where there is none. */
  readonly file: (name: string) => Uint8Array | null;
}

export type Test = readonly [good: boolean, otherwise: string];

export const faults = (...tests: readonly Test[]): readonly string[] => tests.flatMap(([good, otherwise]) => (good ? [] : [otherwise]));
