import { unzipSync, zipSync } from "fflate";
import type { Random } from "../random";

const decoder = new TextDecoder();
const encoder = new TextEncoder();

const VALUES = ["", "-1", "0", "1e308", "NaN", "99999999999", "1.5", "__proto__", "A1:XFD1048576", "ZZZZ1", "A0", "rId999", "../../../etc/hostname", "https://example.org/", "&#0;", "&#x110000;", "&amp;amp;", "shared", "array", "dataTable", "s", "str", "inlineStr", "b", "e", "d", "xl/workbook.xml", "x".repeat(5000)] as const;

/** A workbook with something wrong in it: in its bytes, in its parts, or in the XML of one. */
export function spoiled(r: Random, workbook: Uint8Array): Uint8Array {
  if (r.chance(0.1)) return workbook.slice(0, r.whole(0, workbook.length));
  if (r.chance(0.1)) return flipped(r, workbook);
  const parts = unzipSync(workbook);
  const name = r.pick(Object.keys(parts));
  const roll = r.next();
  if (roll < 0.05) Reflect.deleteProperty(parts, name);
  else if (roll < 0.1) parts[r.pick([`../${name}`, name.toUpperCase(), `/${name}`, "xl/extra.xml"])] = parts[r.pick(Object.keys(parts))] ?? new Uint8Array();
  else if (roll < 0.15) parts[name] = parts[r.pick(Object.keys(parts))] ?? new Uint8Array();
  else parts[name] = encoder.encode(spoiledXml(r, decoder.decode(parts[name])));
  return zipSync(parts, { level: 1 });
}

function flipped(r: Random, bytes: Uint8Array): Uint8Array {
  const broken = bytes.slice();
  for (let n = r.whole(1, 5); n > 0; n--) broken[r.whole(0, broken.length - 1)] = r.whole(0, 255);
  return broken;
}

function spoiledXml(r: Random, xml: string): string {
  let text = xml;
  for (let n = r.whole(1, 4); n > 0; n--) text = r.pick([otherAttribute, otherAttribute, otherText, withoutTag, twice, cut, inserted])(r, text);
  return text;
}

type Spoiling = (r: Random, xml: string) => string;

const matchIn = (r: Random, xml: string, pattern: RegExp): RegExpExecArray | undefined => {
  const found = [...xml.matchAll(pattern)];
  return found.length > 0 ? r.pick(found) : undefined;
};
const replaced = (xml: string, at: RegExpExecArray | undefined, text: string): string => (at ? xml.slice(0, at.index) + text + xml.slice(at.index + at[0].length) : xml);

const otherAttribute: Spoiling = (r, xml) => replaced(xml, matchIn(r, xml, /(?<==")[^"<]*(?=")/g), r.pick(VALUES));
const otherText: Spoiling = (r, xml) => replaced(xml, matchIn(r, xml, /(?<=>)[^<>]+(?=<)/g), r.pick(VALUES));
const withoutTag: Spoiling = (r, xml) => replaced(xml, matchIn(r, xml, /<[^<>]*>/g), "");
const twice: Spoiling = (r, xml) => {
  const at = matchIn(r, xml, /<[^<>]*\/>|<(c|row|sheet|si|xf)\b[^>]*>[^]*?<\/\1>/g);
  return at ? replaced(xml, at, at[0] + at[0]) : xml;
};
const cut: Spoiling = (r, xml) => (r.chance(0.3) ? xml.slice(0, r.whole(0, xml.length)) : xml);
const inserted: Spoiling = (r, xml) => {
  const at = r.whole(0, xml.length);
  return xml.slice(0, at) + r.pick(["<", ">", "&", '"', "<!--", "]]>", "<![CDATA[", '<!DOCTYPE x [<!ENTITY a "b">]>', "<?x", "</c>", "<c/>", "\u0000", "\ufffe", "<x:y>"]) + xml.slice(at);
};
