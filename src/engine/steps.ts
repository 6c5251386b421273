import { type Command, type CommandResult, type CoreCommand, type DispatchResult, type Model, type RangeData, UIPlugin, lockedSheetAllowedCommands, registries } from "@odoo/o-spreadsheet";
import type { Keep } from "./kept";
import { quietly } from "./quietly";

/** One of the grid's own commands, or ours. */
export type Step = CoreCommand | Keep;

/** Does many commands as one step of the grid's undo: all of them or, when one is refused, none. */
export function takeSteps(model: Model, steps: readonly Step[]): void {
  const dispatch = model.dispatch as unknown as (type: string, payload: Omit<TakeSteps, "type">) => DispatchResult;
  const outcome: Outcome = { done: 0, refused: null };
  // The grid copies what a command holds, except functions.
  const result = quietly(() => dispatch(TAKE_STEPS, { steps, outcome: () => outcome }));
  const reason = outcome.refused ?? (result.isSuccessful ? null : String(result.reasons[0]));
  if (reason === null) return;
  if (outcome.done > 0) quietly(() => model.dispatch("REQUEST_UNDO"));
  throw new Error(refusal(reason));
}

export function registerSteps(): void {
  if (registries.featurePluginRegistry.contains(TAKE_STEPS)) return;
  registries.featurePluginRegistry.add(TAKE_STEPS, Steps);
  // Whether a sheet is protected is asked of the sheets that are written to, not of the one that is shown.
  (lockedSheetAllowedCommands as Set<string>).add(TAKE_STEPS);
}

const TAKE_STEPS = "LOT_TAKE_STEPS";

interface Outcome {
  done: number;
  refused: string | null;
}

/** A command of ours: the grid's own list of commands cannot be added to, hence the conversions. */
interface TakeSteps {
  readonly type: typeof TAKE_STEPS;
  readonly steps: readonly Step[];
  readonly outcome: () => Outcome;
}

const asTakeSteps = (command: Command | TakeSteps): TakeSteps | null => (command.type === TAKE_STEPS ? command : null);

class Steps extends UIPlugin {
  override allowDispatch(command: Command): CommandResult {
    for (const step of asTakeSteps(command)?.steps ?? []) {
      if (step.type !== "UPDATE_CELL" || !this.getters.tryGetSheet(step.sheetId)) continue;
      const reason = this.canDispatch(step.type, step).reasons.find((one) => !HARMLESS.has(one));
      if (reason) return reason;
    }
    return "Success" as CommandResult;
  }

  override handle(command: Command): void {
    const taken = asTakeSteps(command);
    if (!taken) return;
    const outcome = taken.outcome();
    for (const step of taken.steps) {
      // The grid takes this for done though nothing changes, and what is done last would be undone in its place.
      if (step.type === "SHOW_SHEET" && this.getters.isSheetVisible(step.sheetId)) continue;
      if (step.type === "UPDATE_CELL") this.#makeRoom(step, outcome);
      else if (step.type === "UPDATE_TABLE" && step.newTableRange) this.#makeRoom({ sheetId: step.sheetId, ...lastOf(step.newTableRange) }, outcome);
      const { isSuccessful, reasons } = this.#dispatch(step);
      if (isSuccessful) outcome.done++;
      else if (!reasons.every((reason) => HARMLESS.has(reason))) {
        outcome.refused = String(reasons[0]);
        return;
      }
    }
  }

  /** The mark lets a step pass where the same command is refused to the user. */
  #dispatch({ type, ...payload }: Step): DispatchResult {
    const dispatch = this.dispatch as unknown as (type: string, payload: object) => DispatchResult;
    return dispatch(type, { ...payload, [OURS]: true });
  }

  #makeRoom({ sheetId, col, row }: { sheetId: string; col: number; row: number }, outcome: Outcome): void {
    const { getters } = this;
    const grow = (dimension: "COL" | "ROW", size: number, needed: number): void => {
      if (needed <= size) return;
      const sheetName = getters.getSheetName(sheetId);
      const { isSuccessful } = this.dispatch("ADD_COLUMNS_ROWS", { sheetId, sheetName, dimension, base: size - 1, quantity: needed - size, position: "after" });
      if (isSuccessful) outcome.done++;
    };
    grow("COL", getters.getNumberCols(sheetId), col + 1);
    grow("ROW", getters.getNumberRows(sheetId), row + 1);
  }
}

const lastOf = ({ _zone: { right, bottom } }: RangeData): { col: number; row: number } => ({ col: right ?? 0, row: bottom ?? 0 });

const OURS = "isLotwrights";

/** True for a command that came here as a step of ours. */
export const isOurs = (command: object): boolean => OURS in command;

/** A cell that holds this already, a border that is there, and a cell beyond the edge of the grid, which grows. */
const HARMLESS: ReadonlySet<string> = new Set(["NoChanges", "TargetOutOfSheet"]);

const refusal = (reason: string): string =>
  reason === "SheetLocked"
    ? "Cannot write to this sheet: it is protected: take the protection off in Excel first"
    : `Cannot write to this workbook: the grid refuses (${reason})`;
