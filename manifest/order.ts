import type { Element } from "./xml";

/**
 * What stands in what, in this order, for the part of the schema that we use ([MS-OWEMXML], sections 5.2, 5.6 and 5.7).
 * "?" may be left out, "+" may stand more than once. What the store asks for is not left out here.
 */
const CONTENT: Readonly<Record<string, string>> = {
  OfficeApp:
    "Id AlternateId? Version ProviderName DefaultLocale DisplayName Description IconUrl HighResolutionIconUrl SupportUrl AppDomains? Hosts Requirements DefaultSettings Permissions VersionOverrides",
  AppDomains: "AppDomain+",
  "OfficeApp/Hosts": "Host+",
  Requirements: "Sets",
  Sets: "Set+",
  DefaultSettings: "SourceLocation",
  VersionOverrides: "Description? Requirements? Hosts Resources",
  "VersionOverrides/Hosts": "Host+",
  "Host[Workbook]": "Runtimes AllFormFactors DesktopFormFactor",
  Runtimes: "Runtime+",
  AllFormFactors: "ExtensionPoint+",
  "ExtensionPoint[CustomFunctions]": "Script Page Metadata Namespace",
  Script: "SourceLocation",
  Page: "SourceLocation",
  Metadata: "SourceLocation",
  DesktopFormFactor: "FunctionFile ExtensionPoint+",
  "ExtensionPoint[PrimaryCommandSurface]": "OfficeTab+",
  OfficeTab: "Group+",
  Group: "Label Icon Control+",
  Icon: "bt:Image+",
  "Control[Button]": "Label Supertip Icon Action",
  Supertip: "Title Description",
  "Action[ShowTaskpane]": "TaskpaneId? SourceLocation Title?",
  Resources: "bt:Images bt:Urls bt:ShortStrings bt:LongStrings",
  "bt:Images": "bt:Image+",
  "bt:Urls": "bt:Url+",
  "bt:ShortStrings": "bt:String+",
  "bt:LongStrings": "bt:String+",
};

interface Place {
  readonly name: string;
  readonly optional: boolean;
  readonly many: boolean;
}

function contentOf(element: Element, parent: Element | undefined): readonly Place[] {
  const type = element.attributes["xsi:type"];
  const content = CONTENT[`${element.name}[${type}]`] ?? CONTENT[`${parent?.name}/${element.name}`] ?? CONTENT[element.name] ?? "";
  return content
    .split(" ")
    .filter((word) => word !== "")
    .map((word) => ({ name: word.replace(/[?+]$/, ""), optional: word.endsWith("?"), many: word.endsWith("+") }));
}

/** A sentence for each element that is missing, unknown, repeated or out of its order. */
export function orderFaults(element: Element, parent?: Element): readonly string[] {
  const places = contentOf(element, parent);
  const rank = (child: Element): number => places.findIndex(({ name }) => name === child.name);
  const known = element.children.filter((child) => rank(child) >= 0);
  const names = places.map(({ name }) => name).join(", ");
  return [
    ...element.children
      .filter((child) => rank(child) < 0)
      .map((child) => `<${element.name}> cannot hold <${child.name}>: ${names === "" ? "it holds no elements" : `it holds ${names}`}`),
    ...places
      .filter(({ name, optional }) => !optional && !known.some((child) => child.name === name))
      .map(({ name }) => `<${element.name}> lacks <${name}>`),
    ...places
      .filter(({ name, many }) => !many && known.filter((child) => child.name === name).length > 1)
      .map(({ name }) => `<${element.name}> holds <${name}> more than once`),
    ...known
      .slice(1)
      .filter((child, i) => rank(child) < rank(known[i] as Element))
      .map((child) => `<${child.name}> stands too late in <${element.name}>: the order is ${names}`),
    ...element.children.flatMap((child) => orderFaults(child, element)),
  ];
}
