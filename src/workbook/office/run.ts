/** Does something in Excel, and says in our words what kept it from being done. Waits while the user types in a cell. */
export async function run<T>(doing: string, batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> {
  try {
    return await Excel.run({ delayForCellEdit: true }, batch);
  } catch (error) {
    throw error instanceof OfficeExtension.Error ? new Error(`Cannot ${doing}: ${reason(error)}`) : error;
  }
}

const REASONS: Readonly<Record<string, string>> = {
  ItemNotFound: "this workbook has no sheet of that name",
  InvalidReference: "there is no such cell",
  InvalidSelection: "something other than one range of cells is selected: select a cell",
  AccessDenied: "the sheet is protected or the workbook may only be read: unlock it, or choose another cell",
  InvalidArgument: "Excel does not take the content: look for a mistake in the formula, or for an array or a merged cell in the way",
  InvalidOperationInCellEditMode: "a cell is being edited: leave it with Enter or Escape and try again",
  RequestAborted: "Excel broke it off: try again",
};

const reason = ({ code, message }: OfficeExtension.Error): string => REASONS[code] ?? `Excel says ${message.replace(/\.$/, "")}`;
