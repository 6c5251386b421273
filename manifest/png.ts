const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** Width and height from a picture's header, or null where the file is no PNG. */
export function pngSize(file: Uint8Array): { readonly width: number; readonly height: number } | null {
  if (file.length < 24 || SIGNATURE.some((byte, i) => file[i] !== byte)) return null;
  const header = new DataView(file.buffer, file.byteOffset);
  return { width: header.getUint32(16), height: header.getUint32(20) };
}
