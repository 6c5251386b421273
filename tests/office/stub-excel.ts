/**
 * The host side of Excel, as far as our add-in asks for it, beneath the real office.js: it stands in the page as
 * window.external, where Excel on Windows has it, takes the requests that office.js sends, keeps them, and answers
 * them from cells of its own. Like Excel it does a request's actions one after the other and stops at the first that
 * it refuses, leaving done what was done.
 */
export interface StubCell {
  readonly value: number | string | boolean;
  readonly formula?: string;
  readonly format?: string;
  readonly error?: boolean;
}

export interface StubBook {
  readonly sheets: Readonly<Record<string, Readonly<Record<string, StubCell>>>>;
  readonly selected: readonly [sheet: string, range: string];
  readonly decimal?: "." | ",";
  /** Ground and text as numbers, red, green and blue; none on the web. */
  readonly theme?: { readonly bodyBackgroundColor: number; readonly bodyForegroundColor: number };
}

/** What the page holds for a test to look at. */
export interface Stub {
  /** Every request, with what it asked and of what; not the telemetry. */
  readonly requests: StubRequest[];
  readonly cells: Record<string, Record<string, StubCell>>;
  /** What the cell functions gave back: [call, good, value or message, code of the error]. */
  readonly results: (readonly [call: number, good: boolean, value: unknown, code?: number])[];
  /** Calls a cell function as Excel does, and gives the call's number. */
  call(id: string, cells: readonly unknown[]): number;
  select(sheet: string, range: string): void;
  showPane(): void;
  /** Another book, and no request yet. */
  open(book: StubBook): void;
}

export type StubRequest = readonly (readonly [path: string, action: string, argument: unknown])[];

declare global {
  interface Window {
    stub: Stub;
  }
}

/** Runs in the page before anything else; it may use nothing from outside itself. */
export function installStub(first: StubBook): void {
  interface Action {
    Id: number;
    ActionType: number;
    Name: string;
    ObjectPathId: number;
    ArgumentInfo?: { Arguments?: unknown[] };
    QueryInfo?: { Select?: string[] };
  }
  interface Path {
    ObjectPathType: number;
    Name: string;
    ParentObjectPathId?: number;
    ArgumentInfo?: { Arguments?: unknown[] };
  }
  type Listener = (event: number, payload: unknown) => void;

  const listeners: Record<number, Listener> = {};
  let requests: StubRequest[] = [];
  const results: Stub["results"] = [];
  let book = first;
  let cells = structuredClone(book.sheets) as Stub["cells"];
  let selected = book.selected;
  let broken = false;
  let calls = 0;

  const safeArray = (items: unknown[]): { toArray: () => unknown[] } => ({ toArray: () => items });
  const refuse = (Code: string): never => {
    throw { Code, Message: `${Code}.`, Location: "" };
  };

  /** What a path leads to, in words: workbook, sheets, sheet:Costs, range:Costs!B4, service:Name. */
  function follow(paths: Record<string, Path>, id: number): string {
    const { ObjectPathType, Name, ParentObjectPathId, ArgumentInfo } = paths[id] as Path;
    const parent = ParentObjectPathId === undefined ? "" : follow(paths, ParentObjectPathId);
    const argument = String(ArgumentInfo?.Arguments?.[0] ?? "");
    if (ObjectPathType === 1) return "workbook";
    if (ObjectPathType === 2) return `service:${Name}`;
    if (ObjectPathType === 6) return Name;
    if (ObjectPathType === 5) return argument in cells ? `sheet:${argument}` : refuse("ItemNotFound");
    if (Name === "GetRange") return `range:${parent.slice("sheet:".length)}!${argument}`;
    if (Name === "GetSelectedRange") return selected[1] === "" ? refuse("InvalidSelection") : `range:${selected.join("!")}`;
    if (Name === "Worksheet") return `sheet:${parent.slice("range:".length).replace(/!.*/, "")}`;
    return `${parent}.${Name}`;
  }

  const column = (letters: string): number => [...letters].reduce((n, letter) => n * 26 + letter.charCodeAt(0) - 64, 0);
  const letters = (n: number): string => (n > 26 ? String.fromCharCode(64 + Math.floor((n - 1) / 26)) : "") + String.fromCharCode(65 + ((n - 1) % 26));

  function area(path: string): { sheet: string; top: number; left: number; rows: number; columns: number } {
    const [, sheet = "", from = "A", top = "1", to = from, bottom] = /^range:(.*)!([A-Z]+)(\d+)?(?::([A-Z]+)(\d+)?)?$/.exec(path) ?? [];
    const last = bottom ?? (path.includes(":", 6) && !/\d$/.test(path) ? "1048576" : top);
    return { sheet, top: Number(top), left: column(from), rows: Number(last) - Number(top) + 1, columns: column(to) - column(from) + 1 };
  }

  function grid(path: string, of: (cell: StubCell | undefined) => unknown): unknown[][] {
    const { sheet, top, left, rows, columns } = area(path);
    return Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (_, c) => of(cells[sheet]?.[letters(left + c) + (top + r)])));
  }

  const typeOf = (cell: StubCell | undefined): string =>
    !cell || (cell.value === "" && !cell.formula) ? "Empty" : cell.error ? "Error" : { number: "Double", boolean: "Boolean", string: "String" }[typeof cell.value as "number"];

  function query(path: string, select: readonly string[]): Record<string, unknown> {
    const { top, left, rows, columns } = area(path);
    const answers: Record<string, () => unknown> = {
      values: () => grid(path, (cell) => cell?.value ?? ""),
      formulas: () => grid(path, (cell) => cell?.formula ?? cell?.value ?? ""),
      valueTypes: () => grid(path, typeOf),
      numberFormat: () => grid(path, (cell) => cell?.format ?? "General"),
      rowIndex: () => top - 1,
      columnIndex: () => left - 1,
      rowCount: () => rows,
      columnCount: () => columns,
      name: () => path.replace("sheet:", ""),
      decimalSeparator: () => book.decimal ?? ".",
    };
    return Object.fromEntries(select.flatMap((name) => (answers[name] ? [[name[0]?.toUpperCase() + name.slice(1), answers[name]()]] : [])));
  }

  /**
   * Excel reads a text as if it were typed, unless the cell is formatted as text or an apostrophe stands before it.
   * For the tests' sake it refuses REFUSED(), and after BREAKS() all the rest.
   */
  function typed(before: StubCell | undefined, given: unknown): StubCell {
    const format = before?.format ?? "General";
    const kept = { format };
    if (broken) return refuse("GeneralException");
    if (typeof given !== "string") return { value: format === "@" && given !== "" ? String(given) : (given as number), ...kept };
    broken = given.includes("BREAKS(");
    if (broken || given.includes("REFUSED(")) return refuse("InvalidArgument");
    if (given.startsWith("'")) return { value: given.slice(1), ...kept };
    if (format === "@") return { value: given, ...kept };
    if (given.startsWith("=")) return { value: 0, formula: given, ...kept };
    if (/^#\S+[!?A]$/.test(given)) return { value: given, error: true, ...kept };
    if (/^[\d/.]+$/.test(given)) return { value: Number.parseFloat(given), ...kept };
    return { value: given, ...kept };
  }

  function set(path: string, name: string, rows: unknown[][]): void {
    const { sheet, top, left, rows: height, columns: width } = area(path);
    if (rows.length !== height || rows.some((row) => row.length !== width)) refuse("InvalidArgument");
    const at = cells[sheet] ?? refuse("ItemNotFound");
    if (sheet === "Locked") refuse("AccessDenied");
    rows.forEach((row, r) =>
      row.forEach((given, c) => {
        const cell = letters(left + c) + (top + r);
        const before = at[cell];
        at[cell] = name === "NumberFormat" ? { ...(before ?? { value: "" }), format: String(given) } : typed(before, given);
      }),
    );
  }

  function act(paths: Record<string, Path>, action: Action): unknown {
    const path = follow(paths, action.ObjectPathId);
    const [argument] = action.ArgumentInfo?.Arguments ?? [];
    if (action.ActionType === 2) return query(path, action.QueryInfo?.Select ?? []);
    if (action.ActionType === 4) return void set(path, action.Name, argument as unknown[][]);
    if (action.ActionType === 1) return path.startsWith("range:") ? { _ReferenceId: path } : {};
    if (action.Name === "SetInvocationArrayResults") results.push(...(argument as Stub["results"]));
    if (action.Name === "Select") selected = path.slice("range:".length).split("!") as [string, string];
    return null;
  }

  function answer(body: string): string {
    const { Actions, ObjectPaths } = JSON.parse(body) as { Actions: Action[]; ObjectPaths: Record<string, Path> };
    const done: { ActionId: number; Value: unknown }[] = [];
    const seen: [string, string, unknown][] = [];
    const marks: number[] = [];
    try {
      for (const action of Actions) {
        // A mark in the request: when it is given back, what stood before it is done.
        if (action.ActionType === 5) {
          marks.push(action.Id);
          done.push({ ActionId: action.Id, Value: null });
          continue;
        }
        const kind = { 2: "load", 4: "set" }[action.ActionType] ?? "do";
        if (action.ActionType > 1 && !/^_(?:Keep|Remove)Reference$/.test(action.Name))
          seen.push([follow(ObjectPaths, action.ObjectPathId), `${kind} ${action.Name}`.trim(), action.ArgumentInfo?.Arguments ?? action.QueryInfo?.Select]);
        done.push({ ActionId: action.Id, Value: act(ObjectPaths, action) });
      }
      return JSON.stringify({ Results: done, TraceIds: marks });
    } catch (error) {
      if (error instanceof Error) throw error;
      return JSON.stringify({ Error: error, Results: done, TraceIds: marks });
    } finally {
      if (seen.length > 0 && !seen.some(([path]) => path.startsWith("service:Microsoft.Telemetry"))) requests.push(seen);
    }
  }

  const sets = { ExcelApi: 1.17, SharedRuntime: 1.2, CustomFunctions: 1.9, CustomFunctionsRuntime: 1.4, RibbonApi: 1.2 };
  const answers: Readonly<Record<string, unknown>> = {
    GetAppType: 1,
    GetSolutionRef: "add-in",
    GetAppVersionMajor: 16,
    GetAppVersionMinor: 1,
    GetAppUILocale: 1033,
    GetAppDataLocale: 1033,
    GetDocUrl: "book.xlsx",
    GetAppCapabilities: 1,
    GetActivationMode: 0,
    GetControlIntegrationLevel: 1,
    GetSolutionToken: encodeURIComponent('<r><t cid="" oid="" aid="" /></r>'),
    GetSettings: { Read() {} },
    GetSupportedMatrix: JSON.stringify(sets),
    GetHostFullVersion: "16.0.20000.0",
    GetOfficeThemeInfo: JSON.stringify(book.theme ?? { bodyBackgroundColor: 0xffffff, bodyForegroundColor: 0 }),
  };
  const context = Object.fromEntries(Object.entries(answers).map(([name, value]) => [name, () => value]));

  const external = {
    GetContext: () => context,
    Execute(_: number, params: [unknown[]], callback: (response: unknown) => void) {
      const body = params[0][4] as string;
      setTimeout(() => callback(safeArray([0, [200, [], answer(body)]])));
    },
    RegisterEvent(event: number, _target: string, listener: Listener, callback: (status: number) => void) {
      listeners[event] = listener;
      callback(0);
    },
    UnregisterEvent(_event: number, _target: string, callback: (status: number) => void) {
      callback(0);
    },
  };
  Object.defineProperty(window, "external", { value: external });

  const message = (category: number, type: number, content: unknown): number => {
    calls++;
    listeners[33]?.(33, safeArray([safeArray([category, type, "", JSON.stringify(content), calls, false])]));
    return calls;
  };

  window.stub = {
    get requests() {
      return requests;
    },
    get cells() {
      return cells;
    },
    results,
    call: (id, given) => message(1, 1000, [calls + 1, id, [...given], "Costs!B4", 0]),
    select(sheet, range) {
      selected = [sheet, range];
      listeners[2]?.(2, safeArray([]));
    },
    showPane: () => void message(65536, 65539, { visibility: "Visible" }),
    open(next) {
      book = next;
      cells = structuredClone(book.sheets) as Stub["cells"];
      selected = book.selected;
      requests = [];
      broken = false;
    },
  };
}
