import kinetics from "../../shared/checks/kinetics.json";
import { dropRate } from "../../src/core/drop";
import { result } from "../../src/core/expression/formula";
import { Ratio } from "../../src/core/expression/ratio";
import { value } from "../../src/core/expression/value";
import { column, lot } from "./lot";
import { published } from "./published";

published(kinetics, {
  // The rate's unit of time is that of the answer: seconds here.
  Q05: (given) => lot("DROPHOURS", 1, 1 - given.number("fraction"), given.number("k")),
  Q06: (given) => -lot("DROPRATE", column(given.numbers("t_h")), column(given.numbers("c_M"))),
  // The line goes through ln(silver), so that silver is exp(y): too large for a cell, not for the core.
  Q09: (given) => {
    const [x, y] = [given.numbers("x"), given.numbers("y")].map((numbers) => numbers.map((n) => Ratio.of(n)));
    return -value(result(dropRate).of, { hours: x ?? [], silver: (y ?? []).map((one) => one.exp()) }).toNumber();
  },
});
