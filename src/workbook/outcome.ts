export { type CellError, type Outcome, type OutcomeCell, isCellError } from "../engine/outcome";
