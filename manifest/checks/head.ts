import { type Surroundings, faults } from "../fault";
import { all, find } from "../find";
import type { Element } from "../xml";

const SETS = ["SharedRuntime 1.1", "CustomFunctionsRuntime 1.3"];

export function headFaults(root: Element, { version }: Surroundings): readonly string[] {
  const text = (name: string): string => find(root, name)?.text ?? "";
  const sets = all(root, "Set").map(({ attributes }) => `${attributes["Name"]} ${attributes["MinVersion"]}`);
  const hosts = all(root, "Host").map(({ attributes }) => attributes["Name"] ?? attributes["xsi:type"] ?? "none");
  return faults(
    [/^[\da-f]{8}(-[\da-f]{4}){3}-[\da-f]{12}$/i.test(text("Id")), `<Id> is "${text("Id")}": it must be a GUID`],
    [text("Version") === `${version}.0`, `<Version> is ${text("Version")}: package.json says ${version}, so it must be ${version}.0`],
    [text("ProviderName") !== "", "<ProviderName> is empty"],
    [text("DefaultLocale") === "en-US", `<DefaultLocale> is "${text("DefaultLocale")}": the texts are in en-US`],
    [text("Permissions") === "ReadWriteDocument", `<Permissions> is "${text("Permissions")}": the pane writes cells, so it must be ReadWriteDocument`],
    [sets.join() === SETS.join(), `The required sets are ${sets.join(" and ")}: they must be ${SETS.join(" and ")}`],
    [hosts.join() === "Workbook,Workbook", `The hosts are ${hosts.join(" and ")}: both <Hosts> must name Workbook alone`],
    [!find(root, "AppDomains"), "<AppDomains> is not wanted: the pane never leaves its own address"],
  );
}
