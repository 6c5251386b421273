import type { Parameter } from "./entry";
import type { Fault } from "../core/fault";

/** The arguments that a fault names; of a range it names the row as well. */
export function blamed(fault: Fault, parameters: readonly Parameter[]): readonly string[] {
  const names =
    "name" in fault ? [fault.name]
    : "names" in fault ? fault.names
    : fault.kind === "shapes-differ" ? [fault.second]
    : [];
  return parameters.map(({ name }) => name).filter((name) => names.some((named) => named.replace(/, row \d+$/, "") === name));
}
