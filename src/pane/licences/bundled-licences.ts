import { LICENCE_FILES, type Licence } from "./licence";

/** What comes with this page. It is a script beside it, since the page in Excel may connect to nothing, its own address included. */
export async function bundledLicences(): Promise<readonly Licence[]> {
  const address = new URL(LICENCE_FILES.module, document.baseURI).href;
  return ((await import(/* webpackIgnore: true */ address)) as { default: readonly Licence[] }).default;
}
