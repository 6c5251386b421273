import { deflateSync } from "fflate";
import { crc32 } from "./crc32";
import { type Archive, DEFLATED, STORED, type ZipEntry } from "./zip-read";

export interface ArchiveChanges {
  readonly replaced: ReadonlyMap<ZipEntry, Uint8Array>;
  readonly removed: ReadonlySet<ZipEntry>;
  readonly added: ReadonlyMap<string, Uint8Array>;
}

/**
 * Writes an archive again: untouched entries keep their packed bytes, their order and their dates. Extra fields
 * (second time stamps, padding) are left out, since those of the directory and of the entries need not agree.
 */
export function writeZip(archive: Archive, { replaced, removed, added }: ArchiveChanges): Uint8Array {
  const entries = archive.entries.filter((entry) => !removed.has(entry)).map((entry) => {
    const bytes = replaced.get(entry);
    return bytes ? packInto(entry, bytes) : entry;
  });
  const model = entries[0];
  for (const [name, bytes] of added) if (model) entries.push(packInto(named(name, model), bytes));

  const locals: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let offset = 0;
  for (const entry of entries) {
    const line = directoryLine(entry, offset);
    const local = localHeader(line);
    locals.push(local, entry.nameBytes, entry.packed);
    directory.push(line, entry.nameBytes, entry.comment);
    offset += local.length + entry.nameBytes.length + entry.packed.length;
  }
  const directorySize = directory.reduce((size, piece) => size + piece.length, 0);
  return joined([...locals, ...directory, endOf(entries.length, directorySize, offset, archive.comment), archive.comment]);
}

function packInto(entry: ZipEntry, bytes: Uint8Array): ZipEntry {
  const method = entry.method === STORED ? STORED : DEFLATED;
  const packed = method === STORED ? bytes : deflateSync(bytes);
  return { ...entry, method, crc: crc32(bytes), size: bytes.length, packed };
}

/** A new entry takes its date and attributes from one that is there, so that the same change gives the same file. */
const named = (name: string, model: ZipEntry): ZipEntry => ({
  ...model,
  name,
  nameBytes: new TextEncoder().encode(name),
  comment: new Uint8Array(),
  method: DEFLATED,
});

const SIZES_FOLLOW = 0x8;

function directoryLine(entry: ZipEntry, offset: number): Uint8Array {
  const line = entry.header.slice();
  const view = new DataView(line.buffer);
  view.setUint16(8, view.getUint16(8, true) & ~SIZES_FOLLOW, true);
  view.setUint16(10, entry.method, true);
  view.setUint32(16, entry.crc, true);
  view.setUint32(20, entry.packed.length, true);
  view.setUint32(24, entry.size, true);
  view.setUint16(28, entry.nameBytes.length, true);
  view.setUint16(30, 0, true);
  view.setUint16(32, entry.comment.length, true);
  view.setUint32(42, offset, true);
  return line;
}

/** An entry's own header holds the same fields as its line in the directory, two bytes earlier. */
function localHeader(line: Uint8Array): Uint8Array {
  const local = new Uint8Array(30);
  local.set([0x50, 0x4b, 3, 4]);
  local.set(line.subarray(6, 32), 4);
  return local;
}

function endOf(count: number, size: number, offset: number, comment: Uint8Array): Uint8Array {
  const end = new Uint8Array(22);
  const view = new DataView(end.buffer);
  view.setUint32(0, 0x06054b50, true);
  view.setUint16(8, count, true);
  view.setUint16(10, count, true);
  view.setUint32(12, size, true);
  view.setUint32(16, offset, true);
  view.setUint16(20, comment.length, true);
  return end;
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((size, piece) => size + piece.length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
