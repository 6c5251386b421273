/** Where the add-in will be served: https, a folder, with the slash at its end. Throws a sentence for anything else. */
export function baseAddress(written: string): string {
  const refuse = (why: string): never => {
    throw new Error(`Cannot build for "${written}": ${why}: write an address such as https://example.org/lotwright/`);
  };
  if (!URL.canParse(written)) return refuse("it is not an address");
  const address = new URL(written);
  if (address.protocol !== "https:") return refuse("Office loads add-ins over https only");
  if (address.username !== "" || address.password !== "") return refuse("a manifest is no place for a name or a password");
  if (address.search !== "" || address.hash !== "") return refuse("it has a ? or # in it");
  if (/\.(?:html?|xml|json|js)$/i.test(address.pathname)) return refuse("it names a file, and a folder is wanted");
  return address.href.endsWith("/") ? address.href : `${address.href}/`;
}
