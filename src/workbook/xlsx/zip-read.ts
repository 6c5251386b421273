import { Inflate } from "fflate";
import { crc32 } from "./crc32";
import { damaged, FileFault, tooLarge } from "./file-fault";

export interface ZipEntry {
  readonly name: string;
  /** The fixed 46 bytes of its line in the directory: method, date, attributes. */
  readonly header: Uint8Array;
  readonly nameBytes: Uint8Array;
  readonly comment: Uint8Array;
  readonly method: number;
  readonly crc: number;
  readonly size: number;
  /** As it lies in the file, compressed. */
  readonly packed: Uint8Array;
}

export interface Archive {
  readonly entries: readonly ZipEntry[];
  readonly comment: Uint8Array;
}

export const STORED = 0;
export const DEFLATED = 8;

const MEGABYTE = 1024 * 1024;
const MOST_PACKED = 100 * MEGABYTE;
const MOST_PARTS = 65_000;
const MOST_UNPACKED = 1024 * MEGABYTE;
/** Sheets pack to a tenth or a thirtieth; a run of equal bytes, which is what a bomb is made of, to a thousandth. */
const MOST_RATIO = 300;
const RATIO_MATTERS_FROM = 16 * MEGABYTE;
/** Small enough that a part which unpacks to more than it declared is caught before it fills the memory. */
const INFLATE_STEP = 64 * 1024;

const END = 0x06054b50;
const END_64 = 0x06064b50;
const END_64_LOCATOR = 0x07064b50;
const DIRECTORY_LINE = 0x02014b50;
const LOCAL_HEADER = 0x04034b50;
const ENCRYPTED = 1;

/** Reads the directory of an archive; nothing is unpacked yet. */
export function readZip(bytes: Uint8Array): Archive {
  if (bytes.length > MOST_PACKED) throw tooLarge("it is larger than 100 MB");
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    return readDirectory(bytes, view);
  } catch (error) {
    if (error instanceof RangeError) throw damaged("its directory points outside the file");
    throw error;
  }
}

function readDirectory(bytes: Uint8Array, view: DataView): Archive {
  const end = findEnd(bytes, view);
  let count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  const locator = end - 20;
  if (locator >= 0 && view.getUint32(locator, true) === END_64_LOCATOR) {
    const end64 = getUint64(view, locator + 8);
    if (view.getUint32(end64, true) !== END_64) throw damaged("its directory is not where it should be");
    count = getUint64(view, end64 + 32);
    at = getUint64(view, end64 + 48);
  }
  if (count > MOST_PARTS) throw tooLarge("it has more than 65,000 parts");

  const entries: ZipEntry[] = [];
  let unpacked = 0;
  for (let i = 0; i < count; i++) {
    if (view.getUint32(at, true) !== DIRECTORY_LINE) throw damaged("its directory breaks off");
    const { entry, next } = readLine(bytes, view, at);
    at = next;
    unpacked += entry.size;
    if (unpacked > MOST_UNPACKED) throw tooLarge("unpacked it would be larger than 1 GB");
    if (entry.size > RATIO_MATTERS_FROM && entry.size > entry.packed.length * MOST_RATIO)
      throw tooLarge("a part of it unpacks to more than 300 times its size, as no workbook does");
    entries.push(entry);
  }
  const commentLength = view.getUint16(end + 20, true);
  return { entries, comment: bytes.subarray(end + 22, end + 22 + commentLength) };
}

function findEnd(bytes: Uint8Array, view: DataView): number {
  const LONGEST_COMMENT = 0xffff;
  for (let at = bytes.length - 22; at >= Math.max(0, bytes.length - 22 - LONGEST_COMMENT); at--)
    if (view.getUint32(at, true) === END) return at;
  throw damaged("its end is missing");
}

function readLine(bytes: Uint8Array, view: DataView, at: number): { entry: ZipEntry; next: number } {
  const nameLength = view.getUint16(at + 28, true);
  const extraLength = view.getUint16(at + 30, true);
  const commentLength = view.getUint16(at + 32, true);
  const nameEnd = at + 46 + nameLength;
  const extraEnd = nameEnd + extraLength;
  const next = extraEnd + commentLength;
  if (next > bytes.length) throw damaged("its directory breaks off");

  const name = new TextDecoder().decode(bytes.subarray(at + 46, nameEnd));
  if (view.getUint16(at + 8, true) & ENCRYPTED)
    throw new FileFault("Cannot open the file: its parts are locked with a zip password: unpack it and save it in Excel without one");
  const { size, packedSize, offset } = sizes(view, at, nameEnd, extraEnd);
  const dataAt = offset + 30 + view.getUint16(offset + 26, true) + view.getUint16(offset + 28, true);
  if (view.getUint32(offset, true) !== LOCAL_HEADER || dataAt + packedSize > bytes.length)
    throw damaged("a part of it is cut off");

  const entry = {
    name,
    header: bytes.subarray(at, at + 46),
    nameBytes: bytes.subarray(at + 46, nameEnd),
    comment: bytes.subarray(extraEnd, next),
    method: view.getUint16(at + 10, true),
    crc: view.getUint32(at + 16, true),
    size,
    packed: bytes.subarray(dataAt, dataAt + packedSize),
  };
  return { entry, next };
}

/** The three numbers that outgrow 32 bits; the 64-bit ones stand in an extra field, only those that are needed. */
function sizes(view: DataView, at: number, extraAt: number, extraEnd: number): { size: number; packedSize: number; offset: number } {
  const ELSEWHERE = 0xffffffff;
  const ZIP64_FIELD = 1;
  let wideAt = 0;
  for (let field = extraAt; field + 4 <= extraEnd; field += 4 + view.getUint16(field + 2, true))
    if (view.getUint16(field, true) === ZIP64_FIELD) wideAt = field + 4;
  const read = (narrowAt: number): number => {
    const narrow = view.getUint32(narrowAt, true);
    if (narrow !== ELSEWHERE || wideAt === 0) return narrow;
    wideAt += 8;
    return getUint64(view, wideAt - 8);
  };
  const size = read(at + 24);
  const packedSize = read(at + 20);
  return { size, packedSize, offset: read(at + 42) };
}

const getUint64 = (view: DataView, at: number): number => view.getUint32(at, true) + view.getUint32(at + 4, true) * 2 ** 32;

/** Unpacks one entry and holds it against its declared size and checksum. */
export function unpack(entry: ZipEntry): Uint8Array {
  const bytes = entry.method === STORED ? entry.packed : inflate(entry);
  if (bytes.length !== entry.size || crc32(bytes) !== entry.crc) throw damaged(`its part ${entry.name} does not match its checksum`);
  return bytes;
}

function inflate({ name, method, packed, size }: ZipEntry): Uint8Array {
  if (method !== DEFLATED) throw damaged(`its part ${name} is packed in a way that workbooks do not use`);
  const bytes = new Uint8Array(size);
  let filled = 0;
  const stream = new Inflate((chunk) => {
    if (filled + chunk.length > size) throw damaged(`its part ${name} is larger than it says`);
    bytes.set(chunk, filled);
    filled += chunk.length;
  });
  try {
    for (let at = 0; at < packed.length; at += INFLATE_STEP)
      stream.push(packed.subarray(at, at + INFLATE_STEP), at + INFLATE_STEP >= packed.length);
  } catch (error) {
    throw error instanceof FileFault ? error : damaged(`its part ${name} cannot be unpacked`);
  }
  return bytes.subarray(0, filled);
}
