/** As Excel's own: a code that the cell shows and a message beside it. */
export class CellError {
  constructor(
    readonly code: string,
    readonly message = "",
  ) {}
}

/** Puts what Excel's page has around the functions. */
export const inExcel = (): void =>
  void Object.assign(globalThis, { CustomFunctions: { Error: CellError, ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" } } });
