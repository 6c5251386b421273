import { all, find, twice } from "../find";
import { type Element, walk } from "../xml";

const NAMESPACES: readonly (readonly [element: string, attribute: string, value: string])[] = [
  ["OfficeApp", "xmlns", "http://schemas.microsoft.com/office/appforoffice/1.1"],
  ["OfficeApp", "xmlns:xsi", "http://www.w3.org/2001/XMLSchema-instance"],
  ["OfficeApp", "xmlns:bt", "http://schemas.microsoft.com/office/officeappbasictypes/1.0"],
  ["OfficeApp", "xsi:type", "TaskPaneApp"],
  ["VersionOverrides", "xmlns", "http://schemas.microsoft.com/office/taskpaneappversionoverrides"],
  ["VersionOverrides", "xsi:type", "VersionOverridesV1_0"],
];

/** Attributes and the text that an element must have; one without a row has neither. */
const FORM: Readonly<Record<string, readonly string[]>> = {
  Set: ["Name", "MinVersion"],
  Sets: ["DefaultMinVersion"],
  Runtime: ["resid", "lifetime"],
  ExtensionPoint: ["xsi:type"],
  Control: ["xsi:type", "id"],
  Action: ["xsi:type"],
  OfficeTab: ["id"],
  Group: ["id"],
  Namespace: ["resid"],
  FunctionFile: ["resid"],
  Label: ["resid"],
  Title: ["resid"],
  "bt:Url": ["id", "DefaultValue"],
  "bt:String": ["id", "DefaultValue"],
  "bt:Images/bt:Image": ["id", "DefaultValue"],
  "Icon/bt:Image": ["size", "resid"],
  DisplayName: ["DefaultValue"],
  IconUrl: ["DefaultValue"],
  HighResolutionIconUrl: ["DefaultValue"],
  SupportUrl: ["DefaultValue"],
  "OfficeApp/Description": ["DefaultValue"],
  "Supertip/Description": ["resid"],
  "DefaultSettings/SourceLocation": ["DefaultValue"],
  SourceLocation: ["resid"],
};

export function formFaults(root: Element): readonly string[] {
  const wrong = NAMESPACES.filter(([name, attribute, value]) => find(root, name)?.attributes[attribute] !== value);
  const ids = all(root, "Group").concat(all(root, "Control")).map((element) => element.attributes["id"] ?? "");
  return [
    ...(root.name === "OfficeApp" ? [] : [`The outermost element is <${root.name}>: it must be <OfficeApp>`]),
    ...wrong.map(([name, attribute, value]) => `<${name}> must say ${attribute}="${value}"`),
    ...[...walk(root)].flatMap(([element, parents]) => {
      const wants = FORM[`${parents.at(-1)?.name}/${element.name}`] ?? FORM[element.name] ?? [];
      return wants.filter((name) => !element.attributes[name]).map((name) => `<${element.name}> lacks its ${name}`);
    }),
    ...twice(ids).map((id) => `The id ${id} stands on two controls or groups: an id stands once`),
    ...ids.filter((id) => id.length > 125).map((id) => `The id ${id} has ${id.length} characters: 125 are allowed`),
  ];
}
