import { strToU8, unzipSync, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { crc32 } from "../../../src/workbook/xlsx/crc32";
import { readZip, unpack } from "../../../src/workbook/xlsx/zip-read";
import { writeZip } from "../../../src/workbook/xlsx/zip-write";

const archive = zipSync(
  { "a.xml": strToU8("<a/>".repeat(200)), "b.bin": [new Uint8Array([1, 2, 3]), { level: 0 }], "c.xml": strToU8("<c/>") },
  { mtime: "2024-03-05T10:20:30" },
);
const named = (name: string) => {
  const entry = readZip(archive).entries.find((one) => one.name === name);
  if (!entry) throw new Error(`no ${name}`);
  return entry;
};

describe("an archive", () => {
  it("has the checksum that the zip format publishes for its test text", () => {
    expect(crc32(strToU8("123456789"))).toBe(0xcbf43926);
  });

  it("is read entry by entry, packed or stored", () => {
    expect(readZip(archive).entries.map(({ name }) => name)).toEqual(["a.xml", "b.bin", "c.xml"]);
    expect(new TextDecoder().decode(unpack(named("a.xml")))).toBe("<a/>".repeat(200));
    expect([...unpack(named("b.bin"))]).toEqual([1, 2, 3]);
  });

  it("keeps the packed bytes, order and dates of what does not change", () => {
    const source = readZip(archive);
    const replaced = new Map([[source.entries[0] ?? named("a.xml"), strToU8("<new/>")]]);
    const written = readZip(writeZip(source, { replaced, removed: new Set(), added: new Map([["d.xml", strToU8("<d/>")]]) }));
    expect(written.entries.map(({ name }) => name)).toEqual(["a.xml", "b.bin", "c.xml", "d.xml"]);
    expect(written.entries[2]?.packed).toEqual(source.entries[2]?.packed);
    const dates = written.entries.map(({ header }) => [...header.slice(12, 16)].join());
    expect(new Set(dates).size).toBe(1);
    expect(dates[0]).toBe([...(source.entries[0]?.header.slice(12, 16) ?? [])].join());
    expect(written.entries.map((entry) => new TextDecoder().decode(unpack(entry)))).toEqual(["<new/>", "\u0001\u0002\u0003", "<c/>", "<d/>"]);
  });

  it("is read by another program after it was written", () => {
    const source = readZip(archive);
    const bytes = writeZip(source, { replaced: new Map(), removed: new Set(source.entries.slice(1, 2)), added: new Map() });
    expect(Object.keys(unzipSync(bytes))).toEqual(["a.xml", "c.xml"]);
  });

  it("is read when its sizes stand in 64-bit fields and after the data", () => {
    const wide = wideArchive("a.xml", strToU8("<a>wide</a>"));
    const [entry] = readZip(wide).entries;
    expect(entry && new TextDecoder().decode(unpack(entry))).toBe("<a>wide</a>");
    const again = writeZip(readZip(wide), { replaced: new Map(), removed: new Set(), added: new Map() });
    expect(new TextDecoder().decode(unzipSync(again)["a.xml"])).toBe("<a>wide</a>");
    const SIZES_FOLLOW = 8;
    expect((again[6] ?? 0) & SIZES_FOLLOW).toBe(0);
  });
});

/** A zip64 archive with one stored entry whose sizes follow it, as programs write that do not know them beforehand. */
function wideArchive(name: string, data: Uint8Array): Uint8Array {
  const [nameBytes, crc, elsewhere, date] = [strToU8(name), crc32(data), u32(0xffffffff), u32(0x58650000)];
  const sizes = [u64(data.length), u64(data.length)];
  const nameLength = u16(nameBytes.length);
  const entry = [u32(0x04034b50), u16(45), u16(8), u16(0), date, u32(0), elsewhere, elsewhere, nameLength, u16(0), nameBytes, data, u32(0x08074b50), u32(crc), ...sizes].flatMap((bytes) => [...bytes]);
  const line = [
    u32(0x02014b50), u16(45), u16(45), u16(8), u16(0), date, u32(crc), elsewhere, elsewhere, nameLength, u16(28), u16(0), u16(0), u16(0), u32(0), elsewhere,
    nameBytes, u16(1), u16(24), ...sizes, u64(0),
  ].flatMap((bytes) => [...bytes]);
  const end64 = [u32(0x06064b50), u64(44), u16(45), u16(45), u32(0), u32(0), u64(1), u64(1), u64(line.length), u64(entry.length)];
  const locator = [u32(0x07064b50), u32(0), u64(entry.length + line.length), u32(1)];
  const end = [u32(0x06054b50), ...[0xffff, 0xffff, 0xffff, 0xffff].map(u16), elsewhere, elsewhere, u16(0)];
  return new Uint8Array([...entry, ...line, ...[...end64, ...locator, ...end].flatMap((bytes) => [...bytes])]);
}

function littleEndian(value: number, width: number): Uint8Array {
  return Uint8Array.from({ length: width }, (_, i) => Math.floor(value / 2 ** (8 * i)) % 256);
}
const u16 = (value: number): Uint8Array => littleEndian(value, 2);
const u32 = (value: number): Uint8Array => littleEndian(value, 4);
const u64 = (value: number): Uint8Array => littleEndian(value, 8);
