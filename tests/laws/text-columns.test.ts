import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { call, number } from "./call";
import { decimal } from "./numbers";

const payables = fc.constantFrom<number | string | null>(0.975, "97.5%", " 97.5 % ", null, 1, "98%");
const decimals = fc.constantFrom<number | string | null>(2, "2 half-even", null, 0, "3", "1 HALF-EVEN");
/** Prices over quarter ounces: ties are many. */
const row = fc.tuple(fc.integer({ min: 1, max: 4000 }).map((n) => n / 4), fc.integer({ min: 400, max: 900 }).map((n) => n / 20), payables, decimals);

describe("columns read texts as a single cell does", () => {
  it("PAYOUTS pays each row what PAYOUT pays it, with shares and roundings as texts in every row", () =>
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 30 }), (rows) => {
        const column = (i: number) => rows.map((cells) => [cells[i]]);
        const paid = call("PAYOUTS", column(0), "ozt", column(1), column(2), 0.5, 25, column(3)) as number[][];
        rows.forEach(([fine, price, payable, places], i) =>
          expect(paid[i]?.[0]).toBe(number("PAYOUT", fine, "ozt", price, payable, 0.5, 25, places)));
      }),
    ));

  it("and as one text for all rows", () =>
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 30 }), payables, decimals, (rows, payable, places) => {
        const paid = call("PAYOUTS", rows.map(([fine]) => [fine]), "ozt", rows.map(([, price]) => [price]), payable, 0.5, 25, places) as number[][];
        rows.forEach(([fine, price], i) => expect(paid[i]?.[0]).toBe(number("PAYOUT", fine, "ozt", price, payable, 0.5, 25, places)));
      }),
    ));

  it("FINEWEIGHTS finds in each row what FINEWEIGHT finds, with standards, karats and shares by name", () =>
    fc.assert(
      fc.property(fc.array(fc.tuple(decimal(0.01, 900, 2), fc.constantFrom<number | string>("sterling", "22k", "92.5%", "coin", 925, 0.8, "958/1000")), { minLength: 1, maxLength: 30 }), (rows) => {
        const held = call("FINEWEIGHTS", rows.map(([weight]) => [weight]), "g", rows.map(([, fineness]) => [fineness]), "g") as number[][];
        rows.forEach(([weight, fineness], i) => {
          const alone = number("FINEWEIGHT", weight, "g", fineness, "g");
          expect(Math.abs(Number(held[i]?.[0]) / alone - 1)).toBeLessThan(1e-14);
        });
      }),
    ));

  it("a text that says nothing shows its own error, and the others compute", () => {
    const paid = call("PAYOUTS", [[100], [100]], "ozt", 24.5, [["97.5%"], ["some"]]) as unknown[][];
    expect(paid[0]?.[0]).toBe(number("PAYOUT", 100, "ozt", 24.5, "97.5%"));
    expect(paid[1]?.[0]).toMatchObject({ fault: { kind: "unfit", name: "payable" } });
  });
});
