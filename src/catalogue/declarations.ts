import ts from "typescript";

/** A cell function as its source declares it: what the generator of functions.json leaves out. */
export interface Declaration {
  readonly file: string;
  readonly functionName: string;
  readonly exported: boolean;
  /** A declared function; an arrow function or a method is skipped by the generator without a word. */
  readonly declared: boolean;
  readonly id: string;
  readonly returnType: string | null;
  readonly parameters: readonly { readonly name: string; readonly type: string | null; readonly optional: boolean }[];
  readonly blocks: number;
  readonly text: string;
  /** Every tag of the block, in order. */
  readonly tags: readonly { readonly name: string; readonly text: string }[];
}

export function declarations(file: string, source: string): readonly Declaration[] {
  const tree = ts.createSourceFile(file, source, ts.ScriptTarget.Latest, true);
  const found: Declaration[] = [];
  const visit = (node: ts.Node): void => {
    const tags = ts.isFunctionLike(node) || ts.isVariableStatement(node) ? ts.getJSDocTags(node) : [];
    const id = tags.find((tag) => tag.tagName.text === "customfunction");
    if (id) found.push(declaration(file, node, tags, commentOf(id)));
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

function declaration(file: string, node: ts.Node, tags: readonly ts.JSDocTag[], id: string): Declaration {
  const isFunction = ts.isFunctionDeclaration(node);
  const text = node.getSourceFile().text;
  const blocks = (ts.getLeadingCommentRanges(text, node.getFullStart()) ?? [])
    .map(({ pos, end }) => text.slice(pos, end))
    .filter((comment) => comment.startsWith("/**"));
  return {
    file,
    functionName: isFunction ? (node.name?.text ?? "") : "",
    exported: isFunction && (node.modifiers ?? []).some((m) => m.kind === ts.SyntaxKind.ExportKeyword),
    declared: isFunction,
    id: id.split(/\s/)[0] ?? "",
    returnType: isFunction ? (node.type?.getText() ?? null) : null,
    parameters: isFunction
      ? node.parameters.map((p) => ({
          name: p.name.getText(),
          type: p.type?.getText() ?? null,
          optional: p.questionToken !== undefined || p.initializer !== undefined,
        }))
      : [],
    blocks: blocks.length,
    text: blocks.join("\n"),
    tags: tags.map((tag) => ({ name: tag.tagName.text, text: tagText(tag) })),
  };
}

const commentOf = (tag: ts.JSDocTag): string => ts.getTextOfJSDocComment(tag.comment)?.trim() ?? "";
const tagText = (tag: ts.JSDocTag): string =>
  ts.isJSDocParameterTag(tag) ? `${tag.name.getText()} ${commentOf(tag)}` : commentOf(tag);
