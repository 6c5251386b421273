import { NAMESPACE } from "../catalogue/catalogue";
import { type Token, textIn, tokens } from "./tokens";

export type Operator = "+" | "-" | "*" | "/";

/** An argument of a formula, as far as it is plain enough to be computed outside the spreadsheet. */
export type Expression = { readonly text: string } & (
  | { readonly kind: "nothing" }
  | { readonly kind: "value"; readonly value: number | string | boolean }
  /** Written in braces. */
  | { readonly kind: "list"; readonly rows: readonly (readonly (number | string | boolean)[])[] }
  /** A cell or range, columns of a table, a name. */
  | { readonly kind: "reference" }
  | { readonly kind: "columns" }
  | { readonly kind: "name" }
  /** One of our functions. */
  | { readonly kind: "call"; readonly name: string; readonly given: readonly Expression[] }
  | { readonly kind: "negative" | "percent" | "brackets"; readonly of: Expression }
  | { readonly kind: "arithmetic"; readonly operator: Operator; readonly a: Expression; readonly b: Expression }
  /** What the spreadsheet alone computes: its functions, comparisons. */
  | { readonly kind: "foreign" }
);

/** Reads a formula without its equals sign, or a part of one. */
export function expression(text: string): Expression {
  const trimmed = text.trim();
  if (trimmed === "") return { kind: "nothing", text: "" };
  try {
    const parser = new Parser(trimmed);
    const read = parser.sum();
    return parser.isAtEnd() ? read : { kind: "foreign", text: trimmed };
  } catch (thrown) {
    if (thrown instanceof Foreign) return { kind: "foreign", text: trimmed };
    throw thrown;
  }
}

/** Every part of an expression, the inner ones before what holds them. */
export function parts(whole: Expression): readonly Expression[] {
  return [...within(whole).flatMap(parts), whole];
}

function within(whole: Expression): readonly Expression[] {
  switch (whole.kind) {
    case "call":
      return whole.given;
    case "negative":
    case "percent":
    case "brackets":
      return [whole.of];
    case "arithmetic":
      return [whole.a, whole.b];
    default:
      return [];
  }
}

class Foreign extends Error {}

class Parser {
  readonly #tokens: readonly Token[];
  #at = 0;

  constructor(private readonly text: string) {
    this.#tokens = tokens(text).filter(({ kind }) => kind !== "space");
  }

  isAtEnd(): boolean {
    return this.#at === this.#tokens.length;
  }

  sum(): Expression {
    return this.#row(["+", "-"], () => this.#row(["*", "/"], () => this.#signed()));
  }

  #row(operators: readonly Operator[], next: () => Expression): Expression {
    const start = this.#start();
    let a = next();
    for (let operator = this.#operator(operators); operator; operator = this.#operator(operators)) {
      const b = next();
      a = { kind: "arithmetic", operator, a, b, text: this.#since(start) };
    }
    return a;
  }

  #operator(operators: readonly Operator[]): Operator | undefined {
    const found = operators.find((one) => this.#is("operator", one));
    if (found) this.#at++;
    return found;
  }

  #signed(): Expression {
    const start = this.#start();
    if (this.#is("operator", "+")) {
      this.#at++;
      return this.#signed();
    }
    if (!this.#is("operator", "-")) return this.#percent();
    this.#at++;
    const of = this.#signed();
    return of.kind === "value" && typeof of.value === "number"
      ? { kind: "value", value: -of.value, text: this.#since(start) }
      : { kind: "negative", of, text: this.#since(start) };
  }

  #percent(): Expression {
    const start = this.#start();
    let of = this.#one();
    while (this.#is("operator", "%")) {
      this.#at++;
      of = { kind: "percent", of, text: this.#since(start) };
    }
    return of;
  }

  #one(): Expression {
    const token = this.#take();
    const { kind, text } = token;
    switch (kind) {
      case "number":
        return { kind: "value", value: Number(text), text };
      case "text":
        return { kind: "value", value: textIn(text), text };
      case "reference":
      case "columns":
        return { kind, text };
      case "name":
        return /^(?:true|false)$/i.test(text) ? { kind: "value", value: /^true$/i.test(text), text } : { kind, text };
      case "error":
        return { kind: "foreign", text };
      case "function":
        return this.#call(token);
      case "open":
        return text === "(" ? this.#brackets(token) : this.#list(token);
      default:
        throw new Foreign();
    }
  }

  #brackets({ start }: Token): Expression {
    const of = this.sum();
    if (this.#take().text !== ")") throw new Foreign();
    return { kind: "brackets", of, text: this.#since(start) };
  }

  #call({ text: name, start }: Token): Expression {
    const slices = this.#arguments();
    const text = this.#since(start);
    if (!name.toUpperCase().startsWith(`${NAMESPACE}.`)) return { kind: "foreign", text };
    const given = slices.length === 1 && slices[0]?.trim() === "" ? [] : slices;
    return { kind: "call", name: name.toUpperCase(), given: given.map(expression), text };
  }

  /** The texts between the brackets that begin here. */
  #arguments(): readonly string[] {
    const open = this.#take();
    const slices: string[] = [];
    let from = open.end;
    for (let depth = 1; depth > 0; ) {
      const token = this.#take();
      if (token.kind === "open") depth++;
      if (token.kind === "close") depth--;
      if (depth === 0 || (depth === 1 && token.kind === "separator")) {
        slices.push(this.text.slice(from, token.start));
        from = token.end;
      }
    }
    return slices;
  }

  #list({ start }: Token): Expression {
    const rows: (number | string | boolean)[][] = [[]];
    for (let closed = false; !closed; ) {
      const item = this.#signed();
      if (item.kind !== "value") throw new Foreign();
      rows[rows.length - 1]?.push(item.value);
      const { text } = this.#take();
      if (text === ";") rows.push([]);
      else if (text === "}") closed = true;
      else if (text !== ",") throw new Foreign();
    }
    return { kind: "list", rows, text: this.#since(start) };
  }

  #is(kind: Token["kind"], text: string): boolean {
    const token = this.#tokens[this.#at];
    return token?.kind === kind && token.text === text;
  }

  #take(): Token {
    const token = this.#tokens[this.#at++];
    if (!token) throw new Foreign();
    return token;
  }

  #start(): number {
    return this.#tokens[this.#at]?.start ?? this.text.length;
  }

  /** The formula from a place to where the reading has come. */
  #since(start: number): string {
    return this.text.slice(start, this.#tokens[this.#at - 1]?.end);
  }
}
