import type { CellWrite, Change, NamedPlace, NewSheet, Note } from "../workbook/port";
import type { LotMatch } from "./corrections";
import type { FieldId } from "./fields";
import { type Given, type LotInput, isCellGiven } from "./given";
import { matchOf } from "./list";
import { type MadeRoom, makeRoom } from "./make-room";
import { type Readings, netWeight } from "./net-weight";
import { type NewRow, newRow } from "./row";
import type { SheetReading } from "./sheet-reading";
import type { Shop } from "./shop";
import { termsInFormulas } from "./terms-in-formulas";

/** The place into which a lot goes. */
export interface Site {
  /** Every sheet of the workbook. */
  readonly sheets: readonly SheetReading[];
  readonly names: readonly NamedPlace[];
  readonly sheet: SheetReading;
  readonly match: LotMatch;
  /** Headings of columns that are added with the lot. */
  readonly headings: readonly CellWrite[];
  /** The range that the table must take up for those; null where it stays. */
  readonly tableRange: string | null;
  /** The sheet itself, where it is made with the lot. */
  readonly made: NewSheet | null;
}

export interface SetUpLot {
  readonly input: LotInput;
  readonly shop: Shop;
  /** What is known of the fineness and has no column: it goes beside it as a note. */
  readonly ofFineness: readonly string[];
  readonly tableReferences: boolean;
}

/** What a planned cell is a part of. */
export type Part = "row" | "heading" | "sum" | "moved" | "following";

export interface PartCell {
  readonly part: Part;
  readonly heading: string;
  readonly why: string;
  readonly field: FieldId | null;
}

export interface LotChanges {
  readonly sheet: string;
  readonly row: number;
  readonly changes: readonly Change[];
  /** By the cell, as Lots!B4. */
  readonly cells: ReadonlyMap<string, PartCell>;
  /** The rows that a total and what stands under it leave to the lot. */
  readonly room: { readonly from: number; readonly to: number } | null;
  readonly remarks: readonly string[];
}

/** Everything that setting up a lot writes, or sentences that say what is in the way. */
export function lotChanges(site: Site, { input, shop, ofFineness, tableReferences }: SetUpLot): LotChanges | readonly string[] {
  const room = roomAt(site);
  const sheet = room?.sheet ?? site.sheet;
  const match = { ...site.match, list: room?.list ?? site.match.list };
  const weighed = byColumns(input, match);
  const row = newRow(sheet, match, weighed.input, { shop: termsInFormulas(shop, match.list.sheet), tableReferences, canGrowTables: true, overwrite: new Set(Object.keys(weighed.input) as FieldId[]) });
  if (!("cells" in row)) return row;
  const notes = allNotes(row, match, ofFineness, weighed.asWeighed);
  const grown = row.tableRange ?? site.tableRange;
  const { table } = match.list;
  const parts = partsOf(site, row, room);
  return {
    sheet: match.list.sheet,
    row: row.row,
    changes: [
      ...(site.made ? [site.made] : []),
      ...(table !== null && grown !== null ? [{ sheet: match.list.sheet, table, tableRange: grown }] : []),
      ...parts.map(({ write }) => write),
      ...notes,
    ],
    cells: new Map(parts.map(({ write, ...part }) => [`${write.sheet}!${write.cell}`, part])),
    room: room && { from: room.from, to: room.to },
    remarks: [...row.remarks.filter((remark) => room === null || !remark.startsWith("The sums in row")), ...weighed.remarks],
  };
}

const written = ({ values, unit }: Readings): string => `${values.join(" + ")} ${unit}`;

const rooms = new WeakMap<Site, MadeRoom | null>();

function roomAt(site: Site): MadeRoom | null {
  const known = rooms.get(site);
  if (known !== undefined) return known;
  const room = makeRoom(site.sheets, site.sheet, site.match.list, site.names);
  rooms.set(site, room);
  return room;
}

/** Gross and tare go into a list that knows the net weight alone as that. */
function byColumns(input: LotInput, { matches }: LotMatch): { readonly input: LotInput; readonly remarks: readonly string[]; readonly asWeighed: string | null } {
  const { gross, tare, ...others } = input;
  const has = (field: FieldId): boolean => matchOf(matches, field) !== undefined;
  if (!gross || isCellGiven(gross) || has("gross") || !has("net")) {
    const isLeftOut = tare !== undefined && has("gross") && !has("tare") && !has("net");
    return { input, remarks: isLeftOut ? ["Tare has no column, and formulas as in the rows above do not take it off: have a column for it added, or give the gross less it"] : [], asWeighed: null };
  }
  const readings = (given: Given): Readings => ({ values: typeof given.value === "number" ? [given.value] : typeof given.value === "object" ? given.value : [], unit: given.unit ?? "" });
  const net = netWeight(readings(gross), tare && !isCellGiven(tare) ? readings(tare) : null);
  const asWeighed = tare && !isCellGiven(tare) ? `Gross ${written(readings(gross))}, tare ${written(readings(tare))}` : null;
  return net ? { input: { ...others, net }, remarks: [], asWeighed } : { input, remarks: [], asWeighed: null };
}

type Planned = PartCell & { readonly write: CellWrite };

function partsOf({ headings, match, sheet }: Site, row: NewRow, room: MadeRoom | null): Planned[] {
  const headingOf = (cell: string): string => match.list.columns.find(({ letter }) => letter === /^[A-Z]+/.exec(cell)?.[0])?.heading ?? "";
  const part = (write: CellWrite, of: Part, why: string): Planned => ({ write, part: of, heading: headingOf(write.cell), why, field: null });
  const widened = new Map(row.widened.map((write) => [write.cell, write]));
  const own = new Set(row.cells.map(({ write }) => write.cell));
  const moved = (room?.moved ?? []).map((write) => part({ ...write, content: widened.get(write.cell)?.content ?? write.content }, "moved", "moves down by one row"));
  const freed = (room?.freed ?? []).filter(({ cell }) => !own.has(cell)).map((write) => part(write, "moved", "is free for the lot"));
  const isMoved = new Set(moved.map(({ write }) => write.cell));
  return [
    ...moved,
    ...freed,
    ...(room?.following ?? []).map((write) => ({ ...part(write, "following", "names a cell that moves"), heading: write.sheet === sheet.info.name ? headingOf(write.cell) : "" })),
    ...headings.map((write) => ({ ...part(write, "heading", "the heading of a new column"), heading: "New heading" })),
    ...row.cells.map(({ write, heading, why, field }): Planned => ({ write, part: "row", heading, why, field })),
    ...row.widened.filter(({ cell }) => !isMoved.has(cell)).map((write) => part(write, "sum", "takes the new lot in")),
  ];
}

/** What the row itself notes, with what is known of the fineness and of the weighing. */
function allNotes({ notes, row }: NewRow, { list, matches }: LotMatch, ofFineness: readonly string[], asWeighed: string | null): readonly Note[] {
  const cellOf = (...fields: readonly FieldId[]): string | null => {
    const letter = fields.flatMap((field) => matchOf(matches, field)?.column.letter ?? [])[0];
    return letter === undefined ? null : `${letter}${row}`;
  };
  const lines = new Map<string, string>();
  const add = (cell: string | null, ...texts: readonly string[]): void => {
    if (cell !== null && texts.length > 0) lines.set(cell, [...(lines.has(cell) ? [lines.get(cell) ?? ""] : []), ...texts].join("\n"));
  };
  for (const { cell, note } of notes) if (note !== null && !(asWeighed !== null && cell === cellOf("net"))) add(cell, note);
  if (asWeighed !== null) add(cellOf("net"), asWeighed);
  add(cellOf("fineness", "fineWeight", "lot"), ...ofFineness);
  return [...lines].map(([cell, note]) => ({ sheet: list.sheet, cell, note }));
}
