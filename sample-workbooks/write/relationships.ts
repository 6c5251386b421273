/** The start of every relationship's type. */
export const RELATIONSHIPS = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

export interface Link {
  /** The last word of its type, or the whole of it. */
  readonly type: string;
  readonly target: string;
}

/** A list of relationships; the first is rId1. */
export function relationshipsXml(links: readonly Link[]): string {
  const items = links.map(({ type, target }, i) => `<Relationship Id="rId${i + 1}" Type="${type.includes(":") ? type : `${RELATIONSHIPS}/${type}`}" Target="${target}"/>`);
  return `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${items.join("")}</Relationships>`;
}
