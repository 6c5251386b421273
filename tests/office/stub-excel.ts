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

export interface StubTable {
  readonly name: string;
  readonly range: string;
  readonly hasTotals: boolean;
}

/** What is special about a sheet. One that is named Locked is protected. */
export interface StubFacts {
  readonly hiddenColumns?: readonly string[];
  readonly merged?: readonly string[];
  readonly tables?: readonly StubTable[];
}

export interface StubBook {
  readonly sheets: Readonly<Record<string, Readonly<Record<string, StubCell>>>>;
  readonly facts?: Readonly<Record<string, StubFacts>>;
  readonly names?: Readonly<Record<string, string>>;
  /** Looks that differ from the usual ones, by the path of the property. */
  readonly looks?: Readonly<Record<string, unknown>>;
  readonly selected: readonly [sheet: string, range: string];
  readonly decimal?: "." | ",";
  /** An Excel that opens no browser for an add-in. */
  readonly opensNoBrowser?: true;
  /** Ground and text as numbers, red, green and blue; none on the web. */
  readonly theme?: { readonly bodyBackgroundColor: number; readonly bodyForegroundColor: number };
}

/** What the page holds for a test to look at. */
export interface Stub {
  /** Every request, with what it asked and of what; not the telemetry. */
  readonly requests: StubRequest[];
  readonly cells: Record<string, Record<string, StubCell>>;
  /** Everything that the book holds, apart from what is as in any new book. */
  state(): unknown;
  /** Refuses the n-th thing that would change the book from now on, and as many in a row as told; null refuses nothing. */
  failAt(n: number | null, times?: number): void;
  /** Refuses the n-th request from now on before anything of it is done; null refuses nothing. */
  failAtRequest(n: number | null): void;
  /** Whether anything was refused since it was last told so. */
  readonly hasFailed: boolean;
  /** What the cell functions gave back: [call, good, value or message, code of the error]. */
  readonly results: (readonly [call: number, good: boolean, value: unknown, code?: number])[];
  /** Calls a cell function as Excel does, and gives the call's number. */
  call(id: string, cells: readonly unknown[]): number;
  /** The addresses that Excel was asked to open in the user's browser. */
  readonly browsed: readonly string[];
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
    ArgumentInfo?: { Arguments?: unknown[]; ReferencedObjectPathIds?: (number | null)[] };
    QueryInfo?: { Select?: string[] };
  }
  interface Path {
    ObjectPathType: number;
    Name: string;
    ParentObjectPathId?: number;
    ArgumentInfo?: { Arguments?: unknown[]; ReferencedObjectPathIds?: (number | null)[] };
  }
  type Listener = (event: number, payload: unknown) => void;

  const listeners: Record<number, Listener> = {};
  let requests: StubRequest[] = [];
  const results: Stub["results"] = [];
  const browsed: string[] = [];
  /** office.js's own number for it. */
  const OPEN_BROWSER_WINDOW = 102;
  let book = first;
  let cells = structuredClone(book.sheets) as Stub["cells"];
  let selected = book.selected;
  let broken = false;
  let calls = 0;
  let failing: number | null = null;
  let failures = 1;
  let failingRequest: number | null = null;
  let hasFailed = false;
  /** Properties of everything but cells' contents, by the path of their owner. */
  let properties: Record<string, unknown> = {};
  let pictures: Record<string, string> = {};
  let notes: Record<string, string> = {};
  let merged: Record<string, string[]> = {};
  let tables: Record<string, readonly StubTable[]> = {};
  const fill = (): void => {
    cells = structuredClone(book.sheets) as Stub["cells"];
    selected = book.selected;
    broken = false;
    failing = null;
    failingRequest = null;
    properties = { ...book.looks };
    pictures = {};
    notes = {};
    tables = Object.fromEntries(Object.entries(book.facts ?? {}).map(([sheet, facts]) => [sheet, facts.tables ?? []]));
    merged = Object.fromEntries(Object.entries(book.facts ?? {}).map(([sheet, facts]) => [sheet, [...(facts.merged ?? [])]]));
  };

  fill();
  const safeArray = (items: unknown[]): { toArray: () => unknown[] } => ({ toArray: () => items });
  const refuse = (Code: string): never => {
    throw { Code, Message: `${Code}.`, Location: "" };
  };

  /** What things of Excel are like before anybody changes them. */
  const usual: Readonly<Record<string, unknown>> = {
    Visibility: "Visible", Gridlines: true,
    HorizontalAlignment: "General", VerticalAlignment: "Bottom", WrapText: false, IndentLevel: 0,
    Bold: false, Italic: false, Size: 11, Underline: "None", Strikethrough: false, Pattern: "None", Style: "None", Weight: "Thin",
  };
  const usualOf = (path: string, name: string): unknown => (name === "Color" ? (/Fill$/.test(path) ? "#FFFFFF" : "#000000") : name === "Name" && /Font$/.test(path) ? "Calibri" : usual[name]);
  const sheetOf = (path: string): string => /^\w+:(.*?)(?:[!|].*|\.[A-Z]\w*)?$/.exec(path)?.[1] ?? "";
  const rangeText = (sheet: string, top: number, left: number, rows: number, columns: number): string =>
    `range:${sheet}!${letters(left)}${top}${rows > 1 || columns > 1 ? `:${letters(left + columns - 1)}${top + rows - 1}` : ""}`;

  function used(sheet: string): string {
    const filled = Object.entries(cells[sheet] ?? {}).filter(([, { value, formula }]) => value !== "" || formula !== undefined);
    if (filled.length === 0) return "null";
    const spots = filled.map(([address]) => area(`range:${sheet}!${address}`));
    const top = Math.min(...spots.map((spot) => spot.top));
    const left = Math.min(...spots.map((spot) => spot.left));
    return rangeText(sheet, top, left, Math.max(...spots.map((spot) => spot.top)) - top + 1, Math.max(...spots.map((spot) => spot.left)) - left + 1);
  }

  /** What a path leads to, in words: workbook, workbook.Worksheets, sheet:Costs, range:Costs!B4, range:Costs!B4.Format.Font, table:Costs|Lots. */
  function follow(paths: Record<string, Path>, id: number, made: Record<string, string>): string {
    return (made[id] ??= lead(paths, paths[id] as Path, made));
  }
  function lead(paths: Record<string, Path>, { ObjectPathType, Name, ParentObjectPathId, ArgumentInfo }: Path, made: Record<string, string>): string {
    const parent = ParentObjectPathId === undefined ? "" : follow(paths, ParentObjectPathId, made);
    const given = ArgumentInfo?.Arguments ?? [];
    const argument = String(given[0] ?? "");
    const sheet = sheetOf(parent);
    if (ObjectPathType === 1) return "workbook";
    if (ObjectPathType === 2) return `service:${Name}`;
    if (ObjectPathType === 6) return Name;
    if (parent === "null") return "null";
    if (ObjectPathType === 5) {
      if (parent.endsWith(".Borders")) return `${parent}[${argument}]`;
      // A table is asked for by way of the workbook, whatever sheet it is on.
      if (parent.endsWith(".Tables")) return `table:${Object.entries(tables).find(([, all]) => all.some(({ name }) => name === argument))?.[0] ?? refuse("ItemNotFound")}|${argument}`;
      if (parent.endsWith(".Names")) return `name:${argument}`;
      if (parent.endsWith(".Shapes")) return `shape:${sheet}|${argument}`;
      if (parent.endsWith(".Comments")) return `${sheet}!${argument}` in notes ? `note:${sheet}!${argument}` : refuse("ItemNotFound");
      return argument in cells ? `sheet:${argument}` : refuse("ItemNotFound");
    }
    switch (Name) {
      case "Add":
        if (parent.endsWith(".Charts")) return addChart(sheet, argument, follow(paths, ArgumentInfo?.ReferencedObjectPathIds?.[1] ?? ArgumentInfo?.ReferencedObjectPathIds?.[0] ?? 0, made));
        if (parent.endsWith(".Series")) return addSeries(parent, argument);
        return parent.endsWith(".Comments") ? addNote(follow(paths, ArgumentInfo?.ReferencedObjectPathIds?.[0] ?? 0, made).slice("range:".length), String(given[1])) : addSheet(argument);
      case "AddImage":
        return addPicture(sheet, argument);
      case "GetRange":
        return parent.startsWith("table:") ? `range:${sheet}!${tableOf(parent)?.range ?? "A1"}` : `range:${sheet}!${argument}`;
      case "GetRangeOrNullObject":
        return `range:${(book.names?.[parent.slice("name:".length)] ?? "Costs!A1").replaceAll("$", "")}`;
      case "GetUsedRangeOrNullObject":
        return used(sheet);
      case "GetMergedAreasOrNullObject":
        return (merged[sheet] ?? []).length > 0 ? `areas:${sheet}` : "null";
      case "GetColumn": {
        const { top, left, rows } = area(parent);
        return rangeText(sheet, top, left + Number(argument), rows, 1);
      }
      case "GetLocation":
        return parent.replace("note:", "range:");
      case "GetItemAt":
        return parent.endsWith(".Series") ? `${parent}[${argument}]` : `note:${sheet}!${String(items(parent)[Number(argument)]?.Id)}`;
      case "GetSelectedRange":
        return selected[1] === "" ? refuse("InvalidSelection") : `range:${selected.join("!")}`;
      case "Worksheet":
        return `sheet:${sheet}`;
    }
    return `${parent}.${Name}`;
  }

  /** For the tests' sake the n-th change is refused. */
  function mayChange(): void {
    if (failing === null || failing-- > 0 || failures-- <= 0) return;
    hasFailed = true;
    refuse("GeneralException");
  }
  function addSheet(name: string): string {
    mayChange();
    if (name in cells) refuse("ItemAlreadyExists");
    cells[name] = {};
    return `sheet:${name}`;
  }
  function addNote(place: string, text: string): string {
    mayChange();
    if (place in notes) refuse("InvalidArgument");
    notes[place] = text;
    return `note:${place}`;
  }
  /** One with a series over the range that it is made of. */
  function addChart(sheet: string, kind: string, range: string): string {
    mayChange();
    calls++;
    const path = `chart:${sheet}|${calls}`;
    properties = { ...properties, [`${path}.Kind`]: kind, [`${path}.Series[0].Values`]: range };
    return path;
  }
  function addSeries(parent: string, name: string): string {
    mayChange();
    const count = new Set(Object.keys(properties).flatMap((path) => (path.startsWith(`${parent}[`) ? [path.slice(0, path.indexOf("]"))] : []))).size;
    properties = { ...properties, [`${parent}[${count}].Name`]: name };
    return `${parent}[${count}]`;
  }
  function addPicture(sheet: string, image: string): string {
    mayChange();
    calls++;
    pictures[`shape:${sheet}|${calls}`] = image;
    return `shape:${sheet}|${calls}`;
  }
  const tableOf = (path: string) => tables[sheetOf(path)]?.find(({ name }) => path.endsWith(`|${name}`));

  /** Like Excel it names a new column that has no heading, and fills a new row with the formulas of the one above. */
  function resize(path: string, to: string): void {
    mayChange();
    const sheet = sheetOf(path);
    const table = tableOf(path);
    const at = cells[sheet];
    if (!table || !at) return refuse("ItemNotFound");
    const [before, after] = [area(`range:${sheet}!${table.range}`), area(to)];
    if (before.top !== after.top || before.left !== after.left) refuse("InvalidArgument");
    tables = { ...tables, [sheet]: (tables[sheet] ?? []).map((one) => (one === table ? { ...one, range: to.replace(/.*!/, "") } : one)) };
    for (let c = after.left; c < after.left + after.columns; c++) {
      const heading = letters(c) + after.top;
      if ((at[heading]?.value ?? "") === "") at[heading] = { ...at[heading], value: `Column${c - after.left + 1}` };
      const formula = at[letters(c) + (before.top + before.rows - 1)]?.formula;
      for (let r = before.top + before.rows; r < after.top + after.rows; r++) {
        const cell = letters(c) + r;
        if (formula !== undefined && c < before.left + before.columns && (at[cell]?.value ?? "") === "") at[cell] = { ...at[cell], value: 0, formula };
      }
    }
  }

  const without = <T>(all: Record<string, T>, isGone: (key: string) => boolean): Record<string, T> => Object.fromEntries(Object.entries(all).filter(([key]) => !isGone(key)));

  /** Takes away what is there under a path, and all that hangs on it. */
  function drop(path: string): void {
    mayChange();
    const sheet = sheetOf(path);
    if (path.startsWith("note:")) notes = without(notes, (place) => `note:${place}` === path);
    if (path.startsWith("shape:")) pictures = without(pictures, (one) => one === path);
    properties = without(properties, (one) => one === path || one.startsWith(`${path}.`));
    if (!path.startsWith("sheet:")) return;
    cells = without(cells, (name) => name === sheet);
    merged = without(merged, (name) => name === sheet);
    notes = without(notes, (place) => place.startsWith(`${sheet}!`));
    pictures = without(pictures, (one) => sheetOf(one) === sheet);
    properties = without(properties, (one) => sheetOf(one) === sheet);
  }

  function copyFormats(to: string, from: string): void {
    mayChange();
    const [source, target] = [from, to].map((path) => path.slice("range:".length).split("!")) as [[string, string], [string, string]];
    const there = cells[target[0]] ?? refuse("ItemNotFound");
    there[target[1]] = { ...(there[target[1]] ?? { value: "" }), format: cells[source[0]]?.[source[1]]?.format ?? "General" };
    properties = without(properties, (path) => path.startsWith(`${to}.`));
    for (const [path, value] of Object.entries(properties)) if (path.startsWith(`${from}.`)) properties[to + path.slice(from.length)] = value;
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

  function items(path: string): Record<string, unknown>[] {
    const sheet = sheetOf(path);
    if (path === "workbook.Worksheets") return Object.keys(cells).map((name) => ({ Id: name, Name: name, Visibility: properties[`sheet:${name}.Visibility`] ?? "Visible" }));
    if (path === "workbook.Names") return Object.keys(book.names ?? {}).map((name) => ({ Id: name, Name: name, Type: "Range", Visible: true }));
    if (path.endsWith(".Tables")) return (tables[sheet] ?? []).map(({ name, hasTotals }) => ({ Id: name, Name: name, ShowHeaders: true, ShowTotals: hasTotals }));
    if (path.endsWith(".Shapes")) return Object.keys(pictures).filter((one) => sheetOf(one) === sheet).map((one) => ({ Id: one.replace(/.*\|/, "") }));
    return Object.entries(notes).filter(([place]) => place.startsWith(`${sheet}!`)).map(([place, Content]) => ({ Id: place.slice(sheet.length + 1), Content }));
  }

  function query(path: string, select: readonly string[]): Record<string, unknown> | null {
    if (path === "null") return null;
    if (/\.(?:Worksheets|Names|Tables|Shapes|Comments)$/.test(path)) return { _Items: items(path) };
    const { sheet, top, left, rows, columns } = area(path);
    const isHidden = (column: number): boolean => book.facts?.[sheet]?.hiddenColumns?.includes(letters(column)) === true;
    const hidden = Array.from({ length: columns }, (_, i) => isHidden(left + i));
    const answers: Record<string, () => unknown> = {
      values: () => grid(path, (cell) => cell?.value ?? ""),
      formulas: () => grid(path, (cell) => cell?.formula ?? cell?.value ?? ""),
      valueTypes: () => grid(path, typeOf),
      numberFormat: () => grid(path, (cell) => cell?.format ?? "General"),
      rowIndex: () => top - 1,
      columnIndex: () => left - 1,
      rowCount: () => rows,
      columnCount: () => columns,
      columnHidden: () => (hidden.every((one) => one === hidden[0]) ? hidden[0] : null),
      rowHidden: () => false,
      left: () => (left - 1) * 48,
      top: () => (top - 1) * 15,
      decimalSeparator: () => book.decimal ?? ".",
      protected: () => sheetOf(path) === "Locked",
      address: () => (merged[sheetOf(path)] ?? []).map((range) => `${sheetOf(path)}!${range}`).join(","),
      id: () => path.replace(/.*\|/, ""),
      ...(path.startsWith("sheet:") ? { name: () => path.slice("sheet:".length) } : {}),
    };
    return Object.fromEntries(
      select.map((name) => {
        const property = (name[0]?.toUpperCase() ?? "") + name.slice(1);
        return [property, answers[name] ? answers[name]() : (properties[`${path}.${property}`] ?? usualOf(path, property))];
      }),
    );
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

  function set(path: string, name: string, given: unknown): void {
    mayChange();
    if (path === "null") refuse("ItemNotFound");
    if (path.startsWith("chart:") || !["Values", "Formulas", "NumberFormat"].includes(name)) {
      const key = `${path}.${name}`;
      const isUsual = JSON.stringify(given) === JSON.stringify(usualOf(path, name));
      properties = { ...without(properties, (one) => one === key), ...(isUsual ? {} : { [key]: given }) };
      return;
    }
    const rows = given as unknown[][];
    const { sheet, top, left, rows: height, columns: width } = area(path);
    if (rows.length !== height || rows.some((row) => row.length !== width)) refuse("InvalidArgument");
    const at = cells[sheet] ?? refuse("ItemNotFound");
    if (sheet === "Locked") refuse("AccessDenied");
    rows.forEach((row, r) =>
      row.forEach((one, c) => {
        const cell = letters(left + c) + (top + r);
        const before = at[cell];
        at[cell] = name === "NumberFormat" ? { ...(before ?? { value: "" }), format: String(one) } : typed(before, one);
      }),
    );
  }

  function act(paths: Record<string, Path>, action: Action, made: Record<string, string>): unknown {
    const path = follow(paths, action.ObjectPathId, made);
    const [argument] = action.ArgumentInfo?.Arguments ?? [];
    if (action.ActionType === 2) return query(path, action.QueryInfo?.Select ?? []);
    if (action.ActionType === 4) return void set(path, action.Name, argument);
    if (action.ActionType === 1) return path === "null" ? null : /^(?:range|sheet|shape|areas):[^.]*$/.test(path) ? { _ReferenceId: path } : {};
    switch (action.Name) {
      case "SetInvocationArrayResults":
        results.push(...(argument as Stub["results"]));
        break;
      case "Select":
        selected = path.slice("range:".length).split("!") as [string, string];
        break;
      case "CopyFrom":
        copyFormats(path, follow(paths, action.ArgumentInfo?.ReferencedObjectPathIds?.[0] ?? 0, made));
        break;
      case "Resize":
        resize(path, follow(paths, action.ArgumentInfo?.ReferencedObjectPathIds?.[0] ?? 0, made));
        break;
      case "Merge":
        mayChange();
        (merged[sheetOf(path)] ??= []).push(path.replace(/.*!/, ""));
        break;
      case "SetValues":
      case "SetXAxisValues":
        set(path, action.Name.slice(3), follow(paths, action.ArgumentInfo?.ReferencedObjectPathIds?.[0] ?? 0, made));
        break;
      case "SetSolidColor":
      case "SetPosition":
        set(path, action.Name.slice(3), argument);
        break;
      case "SetPrintArea":
        set(path, "PrintArea", argument);
        break;
      case "Clear":
        mayChange();
        properties = without(properties, (one) => one === `${path}.Color` || one === `${path}.Pattern`);
        break;
      case "Delete":
        drop(path);
        break;
    }
    return null;
  }

  function answer(body: string): string {
    const { Actions, ObjectPaths } = JSON.parse(body) as { Actions: Action[]; ObjectPaths: Record<string, Path> };
    const done: { ActionId: number; Value: unknown }[] = [];
    const seen: [string, string, unknown][] = [];
    const marks: number[] = [];
    const made: Record<string, string> = {};
    try {
      if (failingRequest !== null && !body.includes("Microsoft.Telemetry") && failingRequest-- === 0) {
        hasFailed = true;
        refuse("GeneralException");
      }
      for (const action of Actions) {
        // A mark in the request: when it is given back, what stood before it is done.
        if (action.ActionType === 5) {
          marks.push(action.Id);
          done.push({ ActionId: action.Id, Value: null });
          continue;
        }
        const kind = { 2: "load", 4: "set" }[action.ActionType] ?? "do";
        if (action.ActionType > 1 && !/^_(?:Keep|Remove)Reference$/.test(action.Name))
          seen.push([follow(ObjectPaths, action.ObjectPathId, made), `${kind} ${action.Name}`.trim(), action.ArgumentInfo?.Arguments ?? action.QueryInfo?.Select]);
        done.push({ ActionId: action.Id, Value: act(ObjectPaths, action, made) });
      }
      return JSON.stringify({ Results: done, TraceIds: marks });
    } catch (error) {
      if (error instanceof Error) throw error;
      return JSON.stringify({ Error: error, Results: done, TraceIds: marks });
    } finally {
      if (seen.length > 0 && !seen.some(([path]) => path.startsWith("service:Microsoft.Telemetry"))) requests.push(seen);
    }
  }

  const sets = { ExcelApi: 1.17, SharedRuntime: 1.2, CustomFunctions: 1.9, CustomFunctionsRuntime: 1.4, RibbonApi: 1.2, ...(book.opensNoBrowser ? {} : { OpenBrowserWindowApi: 1.1 }) };
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
    Execute(method: number, params: readonly unknown[], callback: (response: unknown) => void) {
      if (method === OPEN_BROWSER_WINDOW) {
        browsed.push(String(params[1]));
        return setTimeout(() => callback(safeArray([0])));
      }
      const body = (params[0] as unknown[])[4] as string;
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
    browsed,
    state() {
      // What a formula gives is nobody's to keep: nothing is computed here.
      const kept = Object.entries(cells).map(([sheet, all]) => [sheet, Object.entries(all).map(([address, { value, formula, format = "General" }]) => [address, formula ?? value, format] as const)] as const);
      const shown = kept.map(([sheet, all]) => [sheet, all.filter(([, content, format]) => content !== "" || format !== "General").sort()]);
      return structuredClone({ shown, properties: Object.entries(properties).sort(), pictures, notes, merged, tables });
    },
    failAt(n, times = 1) {
      failing = n;
      failures = times;
      hasFailed &&= n === null;
    },
    failAtRequest(n) {
      failingRequest = n;
      hasFailed &&= n === null;
    },
    get hasFailed() {
      return hasFailed;
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
      requests = [];
      fill();
    },
  };
}
