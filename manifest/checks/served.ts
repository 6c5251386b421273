import { type Surroundings, faults } from "../fault";
import { find, resource } from "../find";
import { type Element, walk } from "../xml";

function addresses(root: Element): readonly string[] {
  return [...walk(root)]
    .filter(([element, parents]) => element.attributes["DefaultValue"] !== undefined && (/Url$|^SourceLocation$/.test(element.name) || parents.at(-1)?.name === "bt:Images"))
    .map(([element]) => element.attributes["DefaultValue"] as string);
}

export function addressFaults(root: Element, { base, file }: Surroundings): readonly string[] {
  return [...new Set(addresses(root))].flatMap((address) => {
    if (!address.startsWith("https://")) return [`${address} is not https: Office loads nothing else`];
    if (!address.startsWith(base)) return [`${address} points elsewhere: the add-in is served at ${base}`];
    const name = address.slice(base.length);
    return file(name) ? [] : [`${address} names no file: there is no ${name === "" ? "name in it" : name} to serve`];
  });
}

/** The page must load the script that the manifest names, and the metadata must be functions. */
export function servedFaults(root: Element, { base, file }: Surroundings): readonly string[] {
  const name = (element: string): string => resource(root, find(root, element)?.children[0]).slice(base.length);
  const read = (served: string): string => new TextDecoder().decode(file(served) ?? new Uint8Array());
  return faults(
    [read(name("Page")).includes(`src="${name("Script")}"`), `${name("Page")} does not load ${name("Script")}, which <Script> names`],
    [/"functions":\s*\[\s*\{/.test(read(name("Metadata"))), `${name("Metadata")}, which <Metadata> names, describes no functions`],
  );
}
