import { Tags } from "./xml-tags";

export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** Replaces stretches of a text; everything between them stays as it is. Edits at one place keep their order. */
export function edited(text: string, edits: readonly Edit[]): string {
  const pieces: string[] = [];
  let from = 0;
  for (const edit of [...edits].sort((a, b) => a.start - b.start)) {
    pieces.push(text.slice(from, edit.start), edit.text);
    from = edit.end;
  }
  pieces.push(text.slice(from));
  return pieces.join("");
}

/** Replaces the value of one attribute, where the tag that begins here has it and it is to change. */
export function attributeEdits(xml: string, tagStart: number, name: string, change: (value: string) => string): Edit[] {
  const tags = new Tags(xml, tagStart);
  tags.next();
  const attribute = tags.attributes().find((one) => one.name === name);
  if (!attribute) return [];
  const text = change(attribute.value);
  return text === attribute.value ? [] : [{ start: attribute.valueStart, end: attribute.end - 1, text }];
}
