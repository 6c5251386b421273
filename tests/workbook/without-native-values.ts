import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";

/** LibreOffice computes what has no stored value; what a function of ours gave is kept, since it has none of them. */
export function withoutNativeValues(bytes: Uint8Array): Uint8Array {
  const parts = Object.entries(unzipSync(bytes)).map(([name, part]) => {
    if (!/^xl\/worksheets\/sheet\d+\.xml$/.test(name)) return [name, part] as const;
    const xml = strFromU8(part).replace(/<c ([^>]*)><f([^>]*)>([^<]*)<\/f><v>[^<]*<\/v><\/c>/g, (cell, attributes: string, kind: string, formula: string) =>
      formula.includes("_xldudf_") ? cell : `<c ${attributes.replace(/ t="\w+"/, "")}><f${kind}>${formula}</f></c>`,
    );
    return [name, strToU8(xml)] as const;
  });
  return zipSync(Object.fromEntries(parts));
}
