import type { CellContent, CellReading, CellWrite, WorkbookPort } from "./port";

/** A change that is shown before it happens: each cell with its before and after. */
export interface PlannedCell {
  readonly write: CellWrite;
  readonly before: CellReading;
  /** A filled cell is written only when its overwriting was asked for. */
  readonly overwrites: boolean;
}

export interface Plan {
  readonly cells: readonly PlannedCell[];
}

export interface Undo {
  undo(): Promise<void>;
}

const isFilled = (cell: CellReading): boolean =>
  cell.formula !== null || (cell.value !== null && cell.value !== "");

export async function plan(port: WorkbookPort, writes: readonly CellWrite[]): Promise<Plan> {
  const cells = [];
  for (const write of writes) {
    const before = await readOne(port, write);
    cells.push({ write, before, overwrites: isFilled(before) });
  }
  return { cells };
}

/**
 * Applies a plan whole. Refuses when a filled cell was not allowed to be overwritten, or when a cell changed
 * between the planning and now; nothing is written then.
 */
export async function apply(port: WorkbookPort, plan: Plan, allowOverwrite: (cell: PlannedCell) => boolean): Promise<Undo> {
  for (const cell of plan.cells) {
    if (cell.overwrites && !allowOverwrite(cell))
      throw new Error(`${at(cell.write)} is filled: tick it to overwrite it, or choose another cell`);
    const now = await readOne(port, cell.write);
    if (now.formula !== cell.before.formula || (now.formula === null && now.value !== cell.before.value))
      throw new Error(`${at(cell.write)} changed since the review: look at it again before writing`);
  }
  await port.write(plan.cells.map((cell) => cell.write));
  return { undo: () => port.write(plan.cells.map(restoring)) };
}

function restoring({ write, before }: PlannedCell): CellWrite {
  const content: CellContent = before.formula ?? before.value;
  const asText = before.formula === null && typeof before.value === "string";
  return { sheet: write.sheet, cell: write.cell, content, ...(asText ? { asText } : {}) };
}

async function readOne(port: WorkbookPort, write: CellWrite): Promise<CellReading> {
  const [row] = await port.read({ sheet: write.sheet, range: write.cell });
  const cell = row?.[0];
  if (!cell) throw new Error(`Could not read ${at(write)}`);
  return cell;
}

const at = (write: CellWrite): string => `${write.sheet}!${write.cell}`;
