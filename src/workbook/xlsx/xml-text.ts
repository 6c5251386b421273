const NAMED: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

export function decodeEntities(text: string): string {
  if (!text.includes("&")) return text;
  return text.replace(/&(?:#x([0-9A-Fa-f]+)|#([0-9]+)|([a-z]+));/g, (whole, hex?: string, decimal?: string, name?: string) => {
    if (name !== undefined) return NAMED[name] ?? whole;
    const code = hex === undefined ? Number(decimal) : parseInt(hex, 16);
    return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });
}

/** The text between two tags, with comments left out and quoted sections as they stand. */
export function textBetween(xml: string, start: number, end: number): string {
  const raw = xml.slice(start, end);
  const lines = raw.includes("\r") ? raw.replace(/\r\n?/g, "\n") : raw;
  if (!lines.includes("<")) return decodeEntities(lines);
  return lines
    .split(/(<!\[CDATA\[[^]*?\]\]>|<!--[^]*?-->)/)
    .map((piece) => (piece.startsWith("<![CDATA[") ? piece.slice(9, -3) : piece.startsWith("<!--") ? "" : decodeEntities(piece)))
    .join("");
}

/** Characters that XML cannot hold in any form. */
const UNWRITABLE = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\uFFFE\uFFFF]|\p{Surrogate}/gu;

export const encodeText = (text: string): string =>
  text.replace(UNWRITABLE, "").replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");

export const encodeAttribute = (text: string): string => encodeText(text).replace(/"/g, "&quot;");
