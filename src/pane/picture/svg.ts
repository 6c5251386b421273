/** A shape as data: it becomes elements in the pane, and text for a picture that goes into a sheet. */
export interface Svg {
  readonly tag: string;
  readonly attributes: Readonly<Record<string, string | number>>;
  readonly children: readonly (Svg | string)[];
}

export const svg = (tag: string, attributes: Svg["attributes"] = {}, ...children: Svg["children"]): Svg => ({ tag, attributes, children });

const NAMESPACE = "http://www.w3.org/2000/svg";

/** Built node by node, since the page's policy may forbid to read markup. */
export function svgElement({ tag, attributes, children }: Svg): SVGElement {
  const element = document.createElementNS(NAMESPACE, tag);
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, String(value));
  element.append(...children.map((child) => (typeof child === "string" ? child : svgElement(child))));
  return element;
}

export const svgText = (of: Svg): string => markup({ ...of, attributes: { xmlns: NAMESPACE, ...of.attributes } });

function markup({ tag, attributes, children }: Svg): string {
  const written = Object.entries(attributes).map(([name, value]) => ` ${name}="${escaped(String(value))}"`);
  const inside = children.map((child) => (typeof child === "string" ? escaped(child) : markup(child)));
  return `<${tag}${written.join("")}>${inside.join("")}</${tag}>`;
}

const ENTITIES: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };

/** Half a surrogate pair and most control characters cannot stand in XML, and would spoil the whole picture. */
const FORBIDDEN = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;

const escaped = (text: string): string => text.replace(FORBIDDEN, "").replace(/[&<>"]/g, (sign) => ENTITIES[sign] ?? sign);
