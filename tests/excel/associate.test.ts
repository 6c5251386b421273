import { beforeAll, describe, expect, it } from "vitest";
import { cellFunction } from "../../src/excel/associate";
import type { Call } from "../../src/catalogue/entry";
import { FaultError } from "../../src/core/fault";
import type { Answer, CellValue } from "../../src/functions/answer";

/** As Excel's own: a code that the cell shows and a message beside it. */
class CellError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

beforeAll(() => {
  Object.assign(globalThis, { CustomFunctions: { Error: CellError, ErrorCode: { invalidValue: "#VALUE!", notAvailable: "#N/A" } } });
});

const excelSaysLast = { functionName: "TEST", address: "Costs!B4" };

function calling(arity: number, value: (cells: readonly unknown[]) => CellValue | CellValue[][]): (...cells: unknown[]) => unknown {
  const call: Call = { arity, call: (...cells) => ({ value: () => value(cells) }) as unknown as Answer };
  return cellFunction(call);
}

function thrown(run: () => unknown): unknown {
  try {
    run();
  } catch (error) {
    return error;
  }
  throw new Error("Nothing was thrown");
}

describe("a function that Excel calls", () => {
  it("gets its cells and not what Excel says about the call", () => {
    const cells = calling(2, (given) => JSON.stringify(given));
    expect(cells(10, "lb", excelSaysLast)).toBe('[10,"lb"]');
    expect(cells(10, null, excelSaysLast)).toBe("[10,null]");
    expect(calling(0, (given) => given.length)(excelSaysLast)).toBe(0);
  });

  it("gets the number that a currency value or another data type stands for", () => {
    const cells = calling(2, (given) => JSON.stringify(given));
    const price = { type: "FormattedNumber", basicType: "Double", basicValue: 24.5, numberFormat: "$0.00" };
    expect(cells(price, [[price, 3], ["lb", price]], excelSaysLast)).toBe('[24.5,[[24.5,3],["lb",24.5]]]');
  });

  it("gives its rows as a spill", () => {
    expect(calling(0, () => [["fine", 92.5], ["loss", 0]])()).toEqual([["fine", 92.5], ["loss", 0]]);
  });

  it("shows a fault as #VALUE! with its sentence", () => {
    const fault = { kind: "unfit", name: "fineness", got: "1200", wants: "parts per thousand" } as const;
    const error = thrown(calling(0, () => { throw new FaultError(fault); }));
    expect(error).toEqual(new CellError("#VALUE!", "Cannot use fineness = 1200: it must be parts per thousand"));
  });

  it("shows what is not known yet as #N/A with its sentence", () => {
    const error = thrown(calling(0, () => { throw new FaultError({ kind: "awaited", name: "assay", needs: "the umpire's figure" }); }));
    expect(error).toEqual(new CellError("#N/A", "Cannot compute yet: assay is still to come: the umpire's figure"));
  });

  it("shows the fault of one cell of a spill in that cell", () => {
    const spill = calling(0, () => [[1], [{ fault: { kind: "zero-divisor" } }]])() as unknown[][];
    expect(spill).toEqual([[1], [new CellError("#VALUE!", "Cannot divide by zero: give amounts that leave something to divide by")]]);
  });

  it.each([Number.NaN, Number.POSITIVE_INFINITY])("lets no %s out", (value) => {
    expect(thrown(calling(0, () => value))).toMatchObject({ code: "#VALUE!", message: expect.stringContaining("Cannot show the result") });
    expect((calling(0, () => [[1, value]])() as unknown[][])[0]?.[1]).toMatchObject({ code: "#VALUE!" });
  });

  it("says plainly that it failed itself, without a stack or a file", () => {
    const error = thrown(calling(0, () => { throw new TypeError("x is undefined at dist/start.js:1:2"); })) as CellError;
    expect(error).toEqual(new CellError("#VALUE!", "Lotwright itself failed here: report this formula together with what =LOT.VERSION() shows"));
  });
});
