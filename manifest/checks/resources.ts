import { faults } from "../fault";
import { LISTS, find, resource, twice, value } from "../find";
import { type Element, walk } from "../xml";

const LONGEST: Readonly<Record<string, number>> = { "bt:ShortStrings": 125, "bt:LongStrings": 250, "bt:Images": 2048, "bt:Urls": 2048 };
const LIST_OF: Readonly<Record<string, string>> = {
  "bt:Image": "bt:Images",
  Label: "bt:ShortStrings",
  Title: "bt:ShortStrings",
  Namespace: "bt:ShortStrings",
  Description: "bt:LongStrings",
};

export function resourceFaults(root: Element): readonly string[] {
  const lists = LISTS.flatMap((list) => (find(root, list)?.children ?? []).map(({ attributes }) => ({ list, id: attributes["id"] ?? "", value: attributes["DefaultValue"] ?? "" })));
  const uses = [...walk(root)].flatMap(([{ name, attributes }]) => (attributes["resid"] === undefined ? [] : [{ name, resid: attributes["resid"] }]));
  return [
    ...twice(lists.map(({ id }) => id)).map((id) => `The resource ${id} is defined twice: an id stands once`),
    ...lists.filter(({ id }) => id.length > 32).map(({ id }) => `The resource ${id} has an id of ${id.length} characters: 32 are allowed`),
    ...lists.filter(({ id }) => !uses.some(({ resid }) => resid === id)).map(({ id }) => `The resource ${id} is defined and never used`),
    ...lists
      .filter(({ list, value }) => value.length > (LONGEST[list] ?? 0))
      .map(({ list, id, value }) => `${id} has ${value.length} characters: ${LONGEST[list]} are allowed in <${list}>`),
    ...uses.flatMap(({ name, resid }) => {
      const list = LIST_OF[name] ?? "bt:Urls";
      const found = lists.find(({ id }) => id === resid);
      if (!found) return [`<${name}> names ${resid}, which is not defined in <Resources>`];
      return found.list === list ? [] : [`<${name}> names ${resid}, which stands in <${found.list}>: it must stand in <${list}>`];
    }),
    ...faults(
      [value(root, "DisplayName").length <= 125, `<DisplayName> has ${value(root, "DisplayName").length} characters: 125 are allowed`],
      [value(root, "Description").length <= 250, `<Description> has ${value(root, "Description").length} characters: 250 are allowed`],
      [resource(root, find(root, "Namespace")) === "LOT", `The namespace is ${resource(root, find(root, "Namespace"))}: workbooks know the functions by LOT`],
    ),
  ];
}
