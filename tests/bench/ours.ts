import { find } from "../../src/catalogue/catalogue";
import type { Lots } from "./lots";

export const called = (id: string) => find(id) ?? missing(id);

const missing = (id: string): never => {
  throw new Error(`There is no function ${id}`);
};

/** A function's value, as the host asks for it. */
export const value = (id: string, ...cells: readonly unknown[]): unknown => called(id).call(...cells).value();

export const payouts = ({ fine, price, payable, refiningCharge, lotCharges }: Lots): unknown =>
  value("PAYOUTS", fine, [["ozt"]], price, payable, refiningCharge, lotCharges);

export const months = ({ dates, fine, fineOut, clients }: Lots): unknown => value("MONTHS", dates, fine, fineOut, clients);
