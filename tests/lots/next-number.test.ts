import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Day, dayNumber } from "../../src/lots/calendar";
import { nextNumber } from "../../src/lots/next-number";

const today: Day = { year: 2026, month: 4, day: 3 };
const next = (numbers: readonly (string | number)[], day: Day = today) => nextNumber(numbers.map((number) => ({ number })), day);

describe("the next lot number", () => {
  it.each([
    [["2026-013", "2026-014"], "2026-015"],
    [["L0098", "L0099"], "L0100"],
    [["L9998", "L9999"], "L10000"],
    [["AB-9", "AB-10"], "AB-11"],
    [["7/26", "8/26"], "9/26"],
    [[1041, 1042], 1043],
    [[2026013, 2026014], 2026015],
    [["26-04-06", "26-04-07"], "26-04-08"],
    [["L1999", "L2000"], "L2001"],
    [["2024-090", "2025-001", "2025-002"], "2026-001"],
    [["2024-090", "2025-091"], "2026-092"],
    [["2026-014", "2026-014A", "2026-014B"], "2026-015"],
  ] as const)("after %j is %j", (numbers, wanted) => {
    expect(next(numbers)).toMatchObject({ next: wanted, isSure: true });
  });

  it("begins with 1 in a new year, and asks when the list cannot show that it does", () => {
    expect(next(["2025-086", "2025-087"])).toEqual({ next: "2026-001", isSure: false, because: "The first of 2026: the numbers are taken to begin anew, which the list cannot show yet; look at it" });
  });

  it("leaves gaps free and names them", () => {
    expect(next(["2026-001", "2026-002", "2026-005"])).toEqual({ next: "2026-006", isSure: true, because: "Follows 2026-005; 2026-003, 2026-004 are not in the list and stay free" });
  });

  it("is a proposal, and says so, where numbers are mixed, mistyped, without digits or missing", () => {
    expect(next(["L0098", "L0099", "2026-001", "2026-002"])).toMatchObject({ next: "2026-003", isSure: false, because: expect.stringContaining("more than one pattern (L0099, 2026-002)") });
    expect(next(["2026-001", "2026-002", "2026-003", "2026-9004"])).toMatchObject({ next: "2026-004", isSure: false, because: "2026-9004 stands far above the others and was passed over: look at it" });
    expect(next(["C07-12", "C03-13", "C07-14"])).toMatchObject({ next: "C07-15", isSure: false });
    expect(next(["Forks"])).toMatchObject({ isSure: false, because: expect.stringContaining("hold no digits to count on") });
    expect(next([])).toMatchObject({ next: "2026-001", isSure: false });
  });

  it("reads a list with its newest lot on top from below", () => {
    const lots = ["2026-003", "2026-002", "2026-001"].map((number, i) => ({ number, date: dayNumber({ year: 2026, month: 4, day: 3 - i }) }));
    expect(nextNumber(lots, today)).toMatchObject({ next: "2026-004", isSure: true });
  });

  it("tells a month from a plain number by the dates of the lots", () => {
    const lots = [["26-03-01", 3], ["26-03-02", 3], ["26-04-01", 4]].map(([number, month]) => ({ number: String(number), date: dayNumber({ year: 2026, month: Number(month), day: 2 }) }));
    expect(nextNumber(lots, today)).toMatchObject({ next: "26-04-02", isSure: true });
    expect(nextNumber(lots, { ...today, month: 5 })).toMatchObject({ next: "26-05-01", isSure: true });
  });

  const prefix = fc.constantFrom("", "L", "L-", "AB/", "LOT ", "2026-", "no. ");
  const series = fc.record({ prefix, width: fc.integer({ min: 1, max: 6 }), start: fc.integer({ min: 1, max: 90_000 }), length: fc.integer({ min: 1, max: 30 }) });
  const written = ({ prefix: text, width, start, length }: { prefix: string; width: number; start: number; length: number }): string[] =>
    Array.from({ length }, (_, i) => `${text}${String(start + i).padStart(width, "0")}`);

  it("never is one that the list has, whatever stands there", () => {
    fc.assert(
      fc.property(fc.array(fc.oneof(fc.string({ maxLength: 12 }), fc.integer({ min: 0, max: 1e6 }), series.map((s) => written(s)[0] ?? "")), { maxLength: 20 }), (numbers) => {
        const taken = numbers.map((number) => String(number).trim().toLowerCase());
        expect(taken).not.toContain(String(next(numbers).next).trim().toLowerCase());
      }),
    );
  });

  it("goes on by one in every plain series, in its own width", () => {
    fc.assert(
      fc.property(series.filter(({ prefix: text, start, length, width }) => text !== "" && !/^20\d{4,6}$/.test(String(start).padStart(width, "0")) && String(start).length === String(start + length).length), (one) => {
        const numbers = written({ ...one, length: one.length + 1 });
        const last = numbers.pop();
        expect(next(numbers).next).toBe(last);
      }),
    );
  });

  it("is the same in whatever order a plain series stands", () => {
    fc.assert(
      fc.property(series.chain((one) => fc.tuple(fc.constant(written(one)), fc.shuffledSubarray(written(one), { minLength: one.length, maxLength: one.length }))), ([numbers, shuffled]) => {
        expect(next(shuffled).next).toBe(next(numbers).next);
      }),
    );
  });
});
