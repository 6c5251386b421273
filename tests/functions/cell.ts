import { find } from "../../src/catalogue/catalogue";
import { FaultError, errorCode } from "../../src/core/fault";

/** What a cell shows for a call: its value, or the error with its message. */
export function cell(name: string, ...cells: readonly unknown[]): unknown {
  const entry = find(name);
  if (!entry) throw new Error(`No function ${name}`);
  try {
    return entry.call(...cells).value();
  } catch (thrown) {
    if (thrown instanceof FaultError) return `${errorCode(thrown.fault)} ${thrown.message}`;
    throw thrown;
  }
}
