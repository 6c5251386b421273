import { OfficeAddinManifest } from "office-addin-manifest";
import { describe, expect, it } from "vitest";
import { manifestFaults } from "../../manifest/check";
import type { Surroundings } from "../../manifest/fault";
import { inRepository } from "../../src/build/excel-files";
import { repositoryManifest as goodManifest, repositorySurroundings as goodSurroundings } from "../../manifest/repository";

/** The good manifest with one thing changed; the change must have found its place. */
function changed(from: string | RegExp, to: string): string {
  const text = goodManifest.replace(from, to);
  if (text === goodManifest) throw new Error(`Nothing in the manifest matches ${from}`);
  return text;
}

const line = (start: string): RegExp => new RegExp(`\\n *<${start}[^\\n]*`);
const long = (length: number): string => "x".repeat(length);
const surroundings = (with_: Partial<Surroundings>): Surroundings => ({ ...goodSurroundings, ...with_ });
const served = (name: string, text: string): Partial<Surroundings> => ({
  file: (asked) => (asked === name ? new TextEncoder().encode(text) : goodSurroundings.file(asked)),
});

describe("the manifest in the repository", () => {
  it("has no fault", () => {
    expect(manifestFaults(goodManifest, goodSurroundings)).toEqual([]);
  });

  it("is read alike by Microsoft's own reader", async () => {
    const read = await OfficeAddinManifest.readManifestFile(inRepository("manifest/manifest.xml"));
    expect(read).toMatchObject({
      id: "93021240-466b-4817-ad91-62deb85ed67f",
      officeAppType: "TaskPaneApp",
      displayName: "Lotwright",
      version: `${goodSurroundings.version}.0`,
      hosts: ["Workbook"],
      permissions: "ReadWriteDocument",
      defaultSettings: { sourceLocation: "https://localhost:3000/index.html" },
      supportUrl: "https://localhost:3000/reference.html",
    });
  });
});

const seeded: readonly (readonly [fault: string, manifest: string, sentence: string])[] = [
  ["an element that is not closed", changed("</Supertip>", ""), "Line 77: <Supertip> is closed by </Control>"],
  ["an attribute without quotes", changed('resid="Group.Label"', "resid=Group.Label"), "Line 54: this cannot be read as XML: <Label resid=Group.Label />"],
  ["a bare ampersand", changed("cost, recovery and payout", "cost & payout"), "Line 12: & is not one of &amp; &lt; &gt; &quot; &apos;"],
  ["an attribute that stands twice", changed('resid="Group.Label"', 'resid="Group.Label" resid="x"'), "Line 54: <Label> has resid twice"],
  ["a prefix that is not declared", changed(/\n *xmlns:bt="[^"]*"/, ""), "Line 55: the prefix of bt:Image is not declared"],
  ["text beside the document", `${goodManifest}stray`, 'Line 107: "stray" stands outside of the one element'],
  ["an element left out", changed(line("SupportUrl"), ""), "<OfficeApp> lacks <SupportUrl>"],
  ["an unknown element", changed("<Hosts>", "<Colour />\n  <Hosts>"), "<OfficeApp> cannot hold <Colour>"],
  ["an element twice", changed("<Version>0", "<Version>1.0.0.0</Version><Version>0"), "<OfficeApp> holds <Version> more than once"],
  ["elements out of order", changed(/( *<Label resid="ShowPane.Label" \/>\n)([^]*?<\/Supertip>\n)/, "$2$1"), "<Label> stands too late in <Control>: the order is Label, Supertip, Icon, Action"],
  ["requirements behind the settings", changed(/( *<Requirements>[^]*?<\/Requirements>\n)([^]*?<\/DefaultSettings>\n)/, "$2$1"), "<Requirements> stands too late in <OfficeApp>"],
  ["a namespace of another schema", changed("appforoffice/1.1", "appforoffice/1.0"), '<OfficeApp> must say xmlns="http://schemas.microsoft.com/office/appforoffice/1.1"'],
  ["an attribute left out", changed(' DefaultMinVersion="1.1"', ""), "<Sets> lacks its DefaultMinVersion"],
  ["an id that is no GUID", changed("93021240-", "93021240"), '<Id> is "93021240466b-4817-ad91-62deb85ed67f": it must be a GUID'],
  ["a version of its own", changed("<Version>0.", "<Version>7."), `package.json says ${goodSurroundings.version}, so it must be ${goodSurroundings.version}.0`],
  ["too few rights", changed("ReadWriteDocument", "ReadDocument"), '<Permissions> is "ReadDocument"'],
  ["a required set left out", changed(line('Set Name="SharedRuntime"'), ""), "The required sets are CustomFunctionsRuntime 1.3: they must be SharedRuntime 1.1 and CustomFunctionsRuntime 1.3"],
  ["a set newer than decided", changed('MinVersion="1.3"', 'MinVersion="1.4"'), "The required sets are SharedRuntime 1.1 and CustomFunctionsRuntime 1.4"],
  ["another host", changed('Host Name="Workbook"', 'Host Name="Document"'), "The hosts are Document and Workbook"],
  ["a domain to go to", changed("<Hosts>", "<AppDomains><AppDomain>https://example.com</AppDomain></AppDomains>\n  <Hosts>"), "<AppDomains> is not wanted"],
  ["a resource that is not defined", changed('Label resid="Group.Label"', 'Label resid="Grup.Label"'), "<Label> names Grup.Label, which is not defined in <Resources>"],
  ["a resource that is not used", changed("<bt:LongStrings>", '<bt:LongStrings>\n<bt:String id="Spare" DefaultValue="Spare" />'), "The resource Spare is defined and never used"],
  ["a resource defined twice", changed(' id="Icon.80"', ' id="Icon.64"'), "The resource Icon.64 is defined twice"],
  ["a resource in the wrong list", changed('Title resid="ShowPane.Label"', 'Title resid="ShowPane.Tip"'), "<Title> names ShowPane.Tip, which stands in <bt:LongStrings>: it must stand in <bt:ShortStrings>"],
  ["an id of 33 characters", goodManifest.replaceAll("Group.Label", long(33)), `The resource ${long(33)} has an id of 33 characters: 32 are allowed`],
  ["a short text of 126 characters", changed('DefaultValue="Refining functions"', `DefaultValue="${long(126)}"`), "ShowPane.Label has 126 characters: 125 are allowed in <bt:ShortStrings>"],
  ["a long text of 251 characters", changed(/Find a function[^"]*/, long(251)), "ShowPane.Tip has 251 characters: 250 are allowed in <bt:LongStrings>"],
  ["a description of 251 characters", changed(/Exact silver-refining[^"]*/, long(251)), "<Description> has 251 characters: 250 are allowed"],
  ["another namespace", changed('DefaultValue="LOT"', 'DefaultValue="LOTW"'), "The namespace is LOTW: workbooks know the functions by LOT"],
  ["two runtimes", changed(line("Runtime "), '\n<Runtime resid="Page.Url" lifetime="long" /><Runtime resid="Script.Url" lifetime="long" />'), "There are two runtimes: pane and functions must share one"],
  ["a short runtime", changed('lifetime="long"', 'lifetime="short"'), 'The runtime must say lifetime="long"'],
  ["another page for the functions", changed(/(<Page>\s*<SourceLocation resid=")Page/, "$1Functions"), "<Page> names Functions.Url: it must name Page.Url, as the runtime does"],
  ["another page for the ribbon", changed('FunctionFile resid="Page.Url"', 'FunctionFile resid="Script.Url"'), "<FunctionFile> names Script.Url: it must name Page.Url"],
  ["another page for the pane", changed(/(<\/TaskpaneId>\s*<SourceLocation resid=")Page/, "$1Script"), "The pane names Script.Url: it must name Page.Url"],
  ["another page to start with", changed('SourceLocation DefaultValue="https://localhost:3000/index.html"', 'SourceLocation DefaultValue="https://localhost:3000/reference.html"'), "<DefaultSettings> opens https://localhost:3000/reference.html"],
  ["an address without https", changed('id="Page.Url" DefaultValue="https', 'id="Page.Url" DefaultValue="http'), "http://localhost:3000/index.html is not https"],
  ["an address elsewhere", changed('SupportUrl DefaultValue="https://localhost:3000', 'SupportUrl DefaultValue="https://example.com'), "https://example.com/reference.html points elsewhere: the add-in is served at https://localhost:3000/"],
  ["an icon that is not there", changed('id="Icon.16" DefaultValue="https://localhost:3000/icon-16.png', 'id="Icon.16" DefaultValue="https://localhost:3000/icon-17.png'), "https://localhost:3000/icon-17.png names no file: there is no icon-17.png to serve"],
  ["an icon of another size", changed('id="Icon.16" DefaultValue="https://localhost:3000/icon-16.png', 'id="Icon.16" DefaultValue="https://localhost:3000/icon-32.png'), "https://localhost:3000/icon-32.png is 32 × 32: it is named for 16 × 16"],
  ["an icon that is no picture", changed('id="Icon.16" DefaultValue="https://localhost:3000/icon-16.png', 'id="Icon.16" DefaultValue="https://localhost:3000/index.html'), "https://localhost:3000/index.html is not a PNG picture"],
  ["a high-resolution icon of another size", changed(/(HighResolutionIconUrl DefaultValue="[^"]*)64/, "$180"), "https://localhost:3000/icon-80.png is 80 × 80: it is named for 64 × 64"],
  ["a ribbon icon left out", changed(/\n *<bt:Image size="80"[^\n]*/, ""), "An <Icon> lacks its size 80"],
  ["an icon size that Office does not know", changed('size="64"', 'size="63"'), "An <Icon> has a size 63"],
  ["a control with the group's id", changed('id="Lotwright.ShowPane"', 'id="Lotwright.Group"'), "The id Lotwright.Group stands on two controls or groups"],
];

describe("a fault in the manifest is named", () => {
  it.each(seeded)("%s", (_, manifest, sentence) => {
    const faults = manifestFaults(manifest, goodSurroundings);
    expect(faults.filter((fault) => fault.includes(sentence))).not.toEqual([]);
  });

  it("none of them hides behind a crowd of others", () => {
    for (const [fault, manifest] of seeded) expect(manifestFaults(manifest, goodSurroundings).length, fault).toBeLessThanOrEqual(4);
  });
});

describe("a fault beside the manifest is named", () => {
  it("a page that does not load the script", () => {
    const faults = manifestFaults(goodManifest, surroundings(served("index.html", "<!doctype html>")));
    expect(faults).toEqual(["index.html does not load start.js, which <Script> names"]);
  });

  it("metadata without functions", () => {
    const faults = manifestFaults(goodManifest, surroundings(served("functions.json", '{"functions": []}')));
    expect(faults).toEqual(["functions.json, which <Metadata> names, describes no functions"]);
  });

  it("an add-in that is served elsewhere", () => {
    const faults = manifestFaults(goodManifest, surroundings({ base: "https://example.org/lotwright/" }));
    expect(faults).toContain("https://localhost:3000/start.js points elsewhere: the add-in is served at https://example.org/lotwright/");
  });
});
