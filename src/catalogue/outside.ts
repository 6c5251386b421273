/** A value that others published, as a file of shared/checks holds it; `functions` are those that its test calls. */
export interface Published {
  readonly id: string;
  readonly statement: string;
  readonly source: string;
  readonly verified: string;
  readonly functions: readonly string[];
}

/** A program of others that functions were run against. */
export interface Program {
  readonly id: string;
  readonly functions: readonly string[];
  readonly check: string;
  readonly source: string;
}

/** What a function was held against that we did not write. */
export interface OutsideCheck {
  readonly check: string;
  readonly source: string;
  /** A value from memory or common practice says something, but cannot stand alone. */
  readonly decides: boolean;
}

export type OutsideChecks = ReadonlyMap<string, readonly OutsideCheck[]>;

/** Random inputs on which each native twin is computed. */
export const TWIN_INPUTS = 500;
const TWIN: OutsideCheck = {
  check: `its native twin, an ordinary formula, on ${TWIN_INPUTS} random inputs`,
  source: "computed by LibreOffice Calc",
  decides: true,
};

export interface Held {
  readonly published: readonly Published[];
  readonly programs: readonly Program[];
  /** Functions that have a native twin. */
  readonly twins: ReadonlySet<string>;
}

/** For each function what it was held against: programs first, since they try the most. */
export function outsideChecks(ids: readonly string[], { published, programs, twins }: Held): OutsideChecks {
  const own = <T extends { readonly functions: readonly string[] }>(all: readonly T[], id: string): readonly T[] => all.filter(({ functions }) => functions.includes(id));
  return new Map(
    ids.map((id) => [
      id,
      [
        ...(twins.has(id) ? [TWIN] : []),
        ...own(programs, id).map(({ check, source }) => ({ check, source, decides: true })),
        ...bySource(own(published, id)),
      ],
    ]),
  );
}

/** What stands in one source is told together; what stands in a book comes before what is remembered. */
function bySource(rows: readonly Published[]): readonly OutsideCheck[] {
  const told = [...new Set(rows.map(({ source }) => source))].map((source): OutsideCheck => {
    const own = rows.filter((row) => row.source === source);
    const words = own.map((row) => `${row.id}: ${row.statement}${isMemory(row) ? " (from memory)" : ""}`);
    return { check: words.join("; "), source, decides: !own.every(isMemory) };
  });
  return [...told.filter(({ decides }) => decides), ...told.filter(({ decides }) => !decides)];
}

const isMemory = ({ verified }: Published): boolean => verified === "memory";

/** A function that nothing from outside decides, and a check of a function that is not there: one sentence each. */
export function outsideFaults(checks: OutsideChecks, { published, programs }: Held): readonly string[] {
  return [
    ...[...checks]
      .filter(([, held]) => !held.some(({ decides }) => decides))
      .map(([id]) => `${id} is held against nothing from outside: add a published value, a native twin or a program's check in shared/checks`),
    ...[...published, ...programs].flatMap(({ id, functions }) =>
      functions.filter((name) => !checks.has(name)).map((name) => `${id} in shared/checks names ${name}, which is no function`),
    ),
  ];
}
