import { isInside, readAddress, readArea } from "./address";
import type { CellChange } from "./change";
import { emptyMetadata, METADATA_TYPE, withDynamicArrays } from "./dynamic-arrays";
import { FileFault } from "./file-fault";
import { CONTENT_TYPES, type Package, relationshipsPart, relationshipTypes } from "./package";
import { withContentType, withoutContentType, withoutRelationship, withRelationship } from "./package-list";
import { patchSheet } from "./patch-sheet";
import type { Workbook } from "./workbook";
import { encodeXml, STRICT_SPREADSHEET } from "./xml-part";
import { elements, localName } from "./xml-tags";
import { writeZip } from "./zip-write";

/** The file with these cells changed: parts that no change touches keep their very bytes. */
export function patchWorkbook(workbook: Workbook, changes: readonly CellChange[]): Uint8Array {
  const draft = new Draft(workbook.parts);
  const spills = changes.some(({ spill }) => spill !== undefined);
  const dynamicIndex = spills ? markDynamicArrays(workbook, draft) : "";
  let formulasMoved = false;
  for (const [part, ofSheet] of bySheet(workbook, changes)) {
    refuseHeadings(workbook.parts, part, ofSheet);
    const patched = patchSheet(draft.text(part), ofSheet, dynamicIndex);
    draft.write(part, patched.xml);
    formulasMoved ||= patched.formulasMoved;
  }
  if (formulasMoved) dropCalcChain(workbook, draft);
  return draft.bytes();
}

/** Texts of parts on their way into the new file. */
class Draft {
  readonly #written = new Map<string, string>();
  readonly #removed = new Set<string>();

  constructor(readonly parts: Package) {}

  text(part: string): string {
    return this.#written.get(part) ?? this.parts.text(part);
  }

  write(part: string, text: string): void {
    this.#written.set(part, text);
  }

  remove(part: string): void {
    this.#removed.add(part);
  }

  bytes(): Uint8Array {
    const replaced = new Map();
    const added = new Map<string, Uint8Array>();
    for (const [part, text] of this.#written) {
      const entry = this.parts.entry(part);
      if (entry) replaced.set(entry, encodeXml(text));
      else added.set(part, encodeXml(text));
    }
    const removed = new Set([...this.#removed].flatMap((part) => this.parts.entry(part) ?? []));
    return writeZip(this.parts.archive, { replaced, removed, added });
  }
}

function bySheet(workbook: Workbook, changes: readonly CellChange[]): Map<string, CellChange[]> {
  const groups = new Map<string, CellChange[]>();
  for (const change of changes) {
    const sheet = workbook.sheet(change.sheet);
    if (sheet.kind !== "worksheet")
      throw new FileFault(`Cannot change ${sheet.name}!${change.cell}: ${sheet.name} is a ${sheet.kind} and has no cells: choose another sheet`);
    const group = groups.get(sheet.part);
    if (group) group.push(change);
    else groups.set(sheet.part, [change]);
  }
  return groups;
}

/** Excel repairs, and so changes, a table whose headings differ from the names that its own part keeps. */
function refuseHeadings(parts: Package, part: string, changes: readonly CellChange[]): void {
  for (const { type, target } of parts.relationships(part)) {
    if (type !== "table" || target === null) continue;
    for (const tag of elements(parts.text(target), (name) => localName(name) === "table")) {
      const area = readArea(tag.attribute("ref") ?? "");
      if (!area || tag.attribute("headerRowCount") === "0") continue;
      const headings = { ...area, bottom: area.top };
      const hit = changes.find(({ cell }) => {
        const spot = readAddress(cell);
        return spot !== null && isInside(spot, headings);
      });
      if (hit)
        throw new FileFault(`Cannot change ${hit.sheet}!${hit.cell}: it is a heading of the table ${tag.attribute("displayName") ?? ""}: rename it in Excel`);
    }
  }
}

function markDynamicArrays({ parts, part, namespace }: Workbook, draft: Draft): string {
  const metadata = parts.related(part, "sheetMetadata");
  const { index, xml } = withDynamicArrays(metadata === undefined ? emptyMetadata(namespace) : parts.text(metadata));
  if (metadata !== undefined) {
    if (xml !== parts.text(metadata)) draft.write(metadata, xml);
    return index;
  }
  const added = freePart(parts, part.slice(0, part.lastIndexOf("/") + 1));
  draft.write(added, xml);
  draft.write(CONTENT_TYPES, withContentType(draft.text(CONTENT_TYPES), added, METADATA_TYPE));
  const rels = relationshipsPart(part);
  const type = `${relationshipTypes(namespace === STRICT_SPREADSHEET)}sheetMetadata`;
  draft.write(rels, withRelationship(draft.text(rels), type, `/${added}`));
  return index;
}

function freePart(parts: Package, folder: string): string {
  let name = `${folder}metadata.xml`;
  for (let n = 2; parts.has(name); n++) name = `${folder}metadata${n}.xml`;
  return name;
}

/**
 * The chain lists every formula cell in the order of the last calculation. Excel calls a file damaged whose chain names
 * a cell without a formula, and builds the chain anew where there is none; entries also inherit their sheet from the
 * one before, so taking out the whole part is safer than taking out lines. It stays while the same cells have formulas.
 */
function dropCalcChain({ parts, part }: Workbook, draft: Draft): void {
  const rels = relationshipsPart(part);
  for (const { id, type, target } of parts.relationships(part)) {
    if (type !== "calcChain" || target === null) continue;
    draft.remove(target);
    draft.write(rels, withoutRelationship(draft.text(rels), id));
    draft.write(CONTENT_TYPES, withoutContentType(draft.text(CONTENT_TYPES), target));
  }
}
