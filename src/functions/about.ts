import { version as release } from "../../package.json";
import { EDITION } from "../core/matter";
import { plainAnswer } from "./answer";

/**
 * The release of Lotwright and the edition of its constants, so that a shared workbook says what computed it.
 * @customfunction VERSION
 * @returns Release and edition, as text.
 * @words about release edition constants
 * @example =LOT.VERSION() -> Lotwright 0.1.0, atomic weights 2024
 */
export function version(): any {
  return plainAnswer("Release and edition", `Lotwright ${release}, atomic weights ${EDITION}`);
}
