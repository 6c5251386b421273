import type { NewSheet } from "../workbook/port";
import { areaText, addressOf } from "../workbook/xlsx/address";
import { ownHeading } from "./corrections";
import type { FieldId } from "./fields";
import { proposalsOn } from "./find";
import type { Proposal } from "./list";
import { SheetReading } from "./sheet-reading";

/** A list of lots on a sheet that is still to be made. */
export interface OwnList {
  readonly change: NewSheet;
  /** The sheet as it will be, with its headings and no lot. */
  readonly sheet: SheetReading;
  readonly place: Proposal;
}

const COLUMNS: readonly FieldId[] = [
  "lot", "date", "client", "description", "gross", "tare", "net", "fineness", "finenessBasis", "fineWeight",
  "price", "payable", "refiningCharge", "lotCharges", "payout", "copper", "copperBars", "acid", "outturn", "recovery", "status",
];
const WIDE: ReadonlySet<FieldId> = new Set(["client", "description", "finenessBasis", "refiningCharge"]);

/** In which the weights of the new list stand. */
export const OWN_UNITS = ["g", "kg", "lb", "ozt"] as const;

const WEIGHED: ReadonlySet<FieldId> = new Set(["gross", "tare", "net"]);

export function ownList(name: string, unit: string): OwnList {
  const headings = COLUMNS.map((field) => ownHeading(field, WEIGHED.has(field) ? unit : field === "copper" && unit !== "ozt" ? unit : undefined));
  const change: NewSheet = {
    newSheet: name,
    columnWidths: COLUMNS.map((field) => (WIDE.has(field) ? 22 : 14)),
    cells: headings.map((content, i) => ({ cell: addressOf({ row: 1, column: i + 1 }), content, asText: true, look: "heading", wraps: true })),
  };
  const sheet = new SheetReading(
    {
      name,
      isVisible: true,
      isProtected: false,
      used: areaText({ top: 1, left: 1, bottom: 1, right: headings.length }),
      tables: [],
      hiddenColumns: [],
      hasHiddenRows: false,
      merged: [],
    },
    [headings.map((value) => ({ value, formula: null, error: false }))],
  );
  const [place] = proposalsOn(sheet);
  if (!place) throw new Error("Our own headings are not recognised: the fault is in Lotwright, please report it");
  return { change, sheet, place };
}

/** A name that no sheet of the workbook has. */
export function freeSheetName(taken: readonly string[], wanted = "Lots"): string {
  const known = new Set(taken.map((name) => name.toLowerCase()));
  let name = wanted;
  for (let n = 2; known.has(name.toLowerCase()); n++) name = `${wanted} ${n}`;
  return name;
}
