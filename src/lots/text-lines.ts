/** A text in lines that are about so many digits wide; its own line breaks stay. */
export function textLines(text: string, widest: number): readonly string[] {
  return text
    .split(/\r\n|[\n\r\u2028\u2029]/)
    .map((line) => line.replace(/\p{Cc}/gu, " ").trim())
    .filter((line) => line !== "")
    .flatMap((line) => wrapped(line, widest));
}

function wrapped(line: string, widest: number): string[] {
  const lines: string[] = [];
  let current = "";
  for (const word of line.split(/\s+/).flatMap((long) => pieces(long, widest)))
    if (current === "") current = word;
    else if (widthOf(`${current} ${word}`) <= widest) current += ` ${word}`;
    else {
      lines.push(current);
      current = word;
    }
  return [...lines, current];
}

/** A word that is wider than a line is cut, though never inside a character. */
function pieces(word: string, widest: number): string[] {
  const found: string[] = [];
  let current = "";
  for (const sign of word) {
    if (current !== "" && widthOf(current + sign) > widest) {
      found.push(current);
      current = "";
    }
    current += sign;
  }
  return [...found, current];
}

/** In digits. A spreadsheet's column is measured in them, and its font is not known here. */
const widthOf = (text: string): number => [...text].reduce((width, sign) => width + (WIDEST.test(sign) ? 2 : WIDE.test(sign) ? 1.4 : 0.95), 0);

const WIDEST = /[\u1100-\u11ff\u2e80-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60]|[^\u0000-\uffff]/u;
const WIDE = /[\p{Lu}mw@%&—…]/u;
