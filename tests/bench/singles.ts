import { value } from "./ours";
import { medians } from "./measure";
import { type Row, below } from "./row";

const CALLS = 20_000;
const MOST_MS = 0.005;

const SINGLES: Readonly<Record<string, (i: number) => unknown>> = {
  "PAYOUT(fine,\"ozt\",price,payable,charge,charges)": (i) => value("PAYOUT", 100 + i / 1000, "ozt", 24.5, 0.975, 0.5, 25),
  "FINEWEIGHT(weight,\"g\",fineness)": (i) => value("FINEWEIGHT", 7500 + i / 10, "g", 925),
  "FINEWEIGHT(weight,\"ozt\",fineness)": (i) => value("FINEWEIGHT", 240 + i / 1000, "ozt", 958.4),
  "COPPER(fine,\"lb\",allowance)": (i) => value("COPPER", 10 + i / 1000, "lb", 0.13),
};

export function singles(): Row[] {
  const works = Object.fromEntries(
    Object.entries(SINGLES).map(([name, one]) => [name, () => { let last: unknown; for (let i = 0; i < CALLS; i++) last = one(i); return last; }]),
  );
  return Object.entries(medians(works, { rounds: 11, warm: 3 })).map(([name, ms]) => below(`one call of ${name}`, ms / CALLS, MOST_MS));
}
