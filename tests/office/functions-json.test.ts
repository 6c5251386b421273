import { readFileSync, readdirSync } from "node:fs";
import { createRequire } from "node:module";
import { beforeAll, describe, expect, it } from "vitest";
import { inRepository } from "../../src/build/excel-files";
import { withHelpAddresses } from "../../src/build/help-addresses";

interface Rule {
  (functions: unknown): boolean;
  readonly errors?: readonly unknown[] | null;
}
type Reader = new (options: object) => { addSchema(schema: object, key: string): void; getSchema(reference: string): Rule | undefined };

/** Microsoft's own schema of what functions.json may say, as its newest numbered release has it. */
function microsoftsRule(): Rule {
  const schemas = inRepository("node_modules/@microsoft/app-manifest/build/json-schemas/teams/");
  const newest = readdirSync(schemas)
    .map((name) => Number(/^v1\.(\d+)$/.exec(name)?.[1] ?? Number.NaN))
    .filter(Number.isFinite)
    .sort((a, b) => a - b)
    .at(-1);
  const schema = JSON.parse(readFileSync(`${schemas}v1.${newest}/MicrosoftTeams.schema.json`, "utf8")) as object;
  // The reader that the schema's own package brings along.
  const { default: SchemaReader } = createRequire(`${schemas}index.js`)("ajv-draft-04") as { default: Reader };
  const reader = new SchemaReader({ strict: false, validateFormats: false, allErrors: true });
  reader.addSchema(schema, "manifest");
  const rule = reader.getSchema("manifest#/definitions/extensionCustomFunctions");
  if (!rule) throw new Error("Microsoft's schema no longer says what functions.json may hold");
  return rule;
}

interface Functions {
  functions: { id: string; name: string; helpUrl?: string; parameters: { name: string; type: string; optional?: boolean }[] }[];
}

describe("functions.json", () => {
  const text = withHelpAddresses(readFileSync(inRepository("src/catalogue/functions.json"), "utf8"), "https://example.org/lotwright/");
  const good = (): Functions => JSON.parse(text) as Functions;
  const first = (functions: Functions): Functions["functions"][number] => functions.functions[0] as Functions["functions"][number];
  let rule: Rule;
  beforeAll(() => {
    rule = microsoftsRule();
  });

  it("is as Microsoft's schema wants it", () => {
    rule(good());
    expect(rule.errors ?? []).toEqual([]);
  });

  it.each<readonly [string, (functions: Functions) => void]>([
    ["an id with a space", (f) => (first(f).id = "FINE WEIGHT")],
    ["an id of two letters", (f) => (first(f).id = "FW")],
    ["a parameter without a name", (f) => ((first(f).parameters[0] as { name: string }).name = "")],
    ["help that is no address", (f) => (first(f).helpUrl = "")],
    ["no functions at all", (f) => (f.functions = [])],
  ])("would be refused with %s", (_, spoil) => {
    const functions = good();
    spoil(functions);
    expect(rule(functions)).toBe(false);
  });
});
