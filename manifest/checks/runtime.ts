import { type Test, faults } from "../fault";
import { all, find, resource, value } from "../find";
import type { Element } from "../xml";

/** One page serves pane and functions, and stays loaded: so every element that names a page names the runtime's. */
export function runtimeFaults(root: Element): readonly string[] {
  const [runtime, second] = all(root, "Runtime");
  const shared = runtime?.attributes["resid"];
  const pages: readonly (readonly [string, Element | undefined])[] = [
    ["<Page>", find(root, "Page")?.children[0]],
    ["<FunctionFile>", find(root, "FunctionFile")],
    ["The pane", all(root, "Action")[0]?.children.find(({ name }) => name === "SourceLocation")],
  ];
  const start = value(root, "SourceLocation");
  return faults(
    [!second, "There are two runtimes: pane and functions must share one"],
    [runtime?.attributes["lifetime"] === "long", 'The runtime must say lifetime="long": a short one loads anew for each call'],
    ...pages.map(([what, element]): Test => [element?.attributes["resid"] === shared, `${what} names ${element?.attributes["resid"]}: it must name ${shared}, as the runtime does`]),
    [start === resource(root, runtime), `<DefaultSettings> opens ${start}: it must open the runtime's page, ${resource(root, runtime)}`],
  );
}
