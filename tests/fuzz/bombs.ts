import { strToU8, zipSync } from "fflate";
import { handmadeParts, sheet, SHEET } from "../workbook/handmade";

const MEGABYTE = 1024 * 1024;
const zeros = (megabytes: number): Uint8Array => new Uint8Array(megabytes * MEGABYTE);
const parts = (): Record<string, Uint8Array> => handmadeParts({ sheets: { Lots: sheet('<row r="1"><c r="A1"><v>5</v></c><c r="B1"><f>_xldudf_LOT_FINEWEIGHT(A1,"g",925)</f><v>1</v></c></row>') } });

/** Small files that unpack to large ones; a command must refuse them, or end in the memory that it was given. */
export const bombs: Readonly<Record<string, () => Uint8Array>> = {
  "a sheet of 200 MB of nothing": () => zipSync({ ...parts(), [SHEET]: zeros(200) }),
  "a sheet of 15 MB of nothing, below the size at which its ratio counts": () => zipSync({ ...parts(), [SHEET]: zeros(15) }),
  "three hundred parts of 3 MB each": () => zipSync({ ...parts(), ...Object.fromEntries(Array.from({ length: 300 }, (_, i) => [`xl/media/image${i}.bin`, zeros(3)])) }),
  "30 MB of spaces in a shared text": () => zipSync({ ...parts(), [SHEET]: strToU8(sheet(`<row r="1"><c r="A1" t="inlineStr"><is><t>${" ".repeat(15 * MEGABYTE)}</t></is></c><c r="B1"><f>_xldudf_LOT_FINEWEIGHT(A1,"g",925)</f><v>1</v></c></row>`)) }),
  "a million rows": () => zipSync({ ...parts(), [SHEET]: strToU8(sheet(`<row r="1"><c r="A1"><v>5</v></c><c r="B1"><f>_xldudf_LOT_FINEWEIGHT(A1,"g",925)</f><v>1</v></c></row>${"<row/>".repeat(1_048_575)}`)) }),
};
