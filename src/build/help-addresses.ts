import { REFERENCE_PAGE, referencePlace } from "../catalogue/reference-address";

interface Functions {
  readonly functions: readonly { readonly id: string }[];
}

/** The text of functions.json, in which each function says where Excel finds its help. */
export function withHelpAddresses(text: string, base: string): string {
  const described = JSON.parse(text) as Functions;
  const functions = described.functions.map((f) => ({ ...f, helpUrl: base + REFERENCE_PAGE + referencePlace(f.id) }));
  return `${JSON.stringify({ ...described, functions }, null, 2)}\n`;
}
