/** An element of the manifest. Texts beside child elements are white space and are dropped. */
export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Element[];
  readonly text: string;
}

const NAME = String.raw`[A-Za-z_][\w.-]*(?::[A-Za-z_][\w.-]*)?`;
const ATTRIBUTE = String.raw`\s+(${NAME})\s*=\s*"([^"<]*)"`;
const TOKEN = new RegExp(String.raw`<!--(?:(?!--)[^])*-->|</(${NAME})\s*>|<(${NAME})((?:${ATTRIBUTE})*)\s*(/?)>|([^<]+)`, "y");
const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

/**
 * Reads the plain part of XML that a manifest needs: elements, attributes in double quotes, texts, comments. It refuses
 * all the rest (document types, CDATA, instructions, undeclared prefixes), so what it reads any XML reader reads alike.
 */
export function readXml(text: string): Element {
  const start = /^<\?xml version="1\.0" encoding="UTF-8"\?>\s*/.exec(text)?.[0].length ?? 0;
  const lineOf = (at: number): number => text.slice(0, at).split("\n").length;
  const fail = (at: number, what: string): never => {
    throw new Error(`Line ${lineOf(at)}: ${what}`);
  };
  const top: Open = { name: "", attributes: {}, children: [], text: "", prefixes: new Set() };
  const open: Open[] = [top];
  TOKEN.lastIndex = start;
  while (TOKEN.lastIndex < text.length) {
    const at = TOKEN.lastIndex;
    const token = TOKEN.exec(text) ?? fail(at, `this cannot be read as XML: ${text.slice(at, at + 40).split("\n")[0]}`);
    const [, closes, opens, attributes = "", , , empty, words] = token;
    const parent = open.at(-1) as Open;
    if (opens !== undefined) {
      const element = begin(opens, attributes, parent, (what) => fail(at, what));
      parent.children.push(element);
      if (empty === "") open.push(element);
    } else if (closes !== undefined) {
      if (open.length === 1) fail(at, `</${closes}> closes nothing`);
      if (parent.name !== closes) fail(at, `<${parent.name}> is closed by </${closes}>`);
      open.pop();
    } else if (words !== undefined) {
      if (parent === top && words.trim() !== "") fail(at + words.search(/\S/), `"${words.trim().slice(0, 40)}" stands outside of the one element`);
      parent.text += plain(words.trim(), (what) => fail(at, what));
    }
  }
  const last = open.at(-1) as Open;
  if (last !== top) fail(text.length, `<${last.name}> is never closed`);
  const [root, second] = top.children;
  if (!root || second) return fail(text.length, "there must be one outermost element");
  return root;
}

interface Open extends Element {
  readonly children: Element[];
  readonly prefixes: ReadonlySet<string>;
  text: string;
}

function begin(name: string, written: string, parent: Open, fail: (what: string) => never): Open {
  const attributes: Record<string, string> = {};
  for (const [, key = "", value = ""] of written.matchAll(new RegExp(ATTRIBUTE, "g"))) {
    if (key in attributes) fail(`<${name}> has ${key} twice`);
    attributes[key] = plain(value, fail);
  }
  const declared = Object.keys(attributes).flatMap((key) => /^xmlns:(.+)$/.exec(key)?.[1] ?? []);
  const prefixes = new Set([...parent.prefixes, ...declared]);
  for (const word of [name, ...Object.keys(attributes)]) {
    const prefix = /^(.+):/.exec(word)?.[1];
    if (prefix !== undefined && prefix !== "xmlns" && !prefixes.has(prefix)) fail(`the prefix of ${word} is not declared`);
  }
  return { name, attributes, children: [], text: "", prefixes };
}

function plain(words: string, fail: (what: string) => never): string {
  return words.replace(/&([^;&\s]*;)?/g, (_, entity?: string) =>
    ENTITIES[entity?.slice(0, -1) ?? ""] ?? fail(`&${entity ?? ""} is not one of &amp; &lt; &gt; &quot; &apos;`),
  );
}

/** Every element with its parents, the outermost first. */
export function* walk(element: Element, parents: readonly Element[] = []): Generator<readonly [Element, readonly Element[]]> {
  yield [element, parents];
  for (const child of element.children) yield* walk(child, [...parents, element]);
}
