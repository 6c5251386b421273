/** An argument as a formula gives it: the text that stands for it and, where known, what it now holds. */
export class Reference {
  constructor(
    readonly text: string,
    readonly holds?: unknown,
  ) {}
}

/** What an argument holds, whether it came as a plain cell or as a reference. */
export const held = (cell: unknown): unknown => (cell instanceof Reference ? cell.holds : cell);

/** An omitted argument and an empty cell; a sheet gives either as null, undefined or an empty text. */
export const isEmpty = (value: unknown): boolean => value === null || value === undefined || value === "";
