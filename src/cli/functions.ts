import { catalogue, find } from "../catalogue/catalogue";
import type { Entry } from "../catalogue/entry";
import { groups } from "../catalogue/groups";
import { REFERENCE_PAGE, referencePlace } from "../catalogue/reference-address";
import { unknownName } from "../formulas/nearest-name";
import type { Command } from "./command";
import { given } from "./given";
import { Misuse } from "./misuse";

export const functions: Command = {
  takes: "[NAME] [--json]",
  does: "lists the functions, or tells all of one and where the reference has it",
  examples: ["lotwright functions", "lotwright functions COPPER", "lotwright functions COPPER --json"],
  more: "The name may be written with or without LOT. before it. --json gives the list, or the one, as data.",
  endsWithOne: null,
  run(words) {
    const { names: [name], flags } = given(words, { names: ["the name of a function"], optional: true, flags: ["--json"] });
    const asJson = flags.has("--json");
    const entry = name === undefined ? undefined : find(name);
    if (name !== undefined && !entry) throw new Misuse(unknownName(name.toUpperCase().startsWith("LOT.") ? name : `LOT.${name}`));
    if (asJson) console.log(JSON.stringify(entry ? data(entry) : catalogue.map(data), null, 2));
    else console.log(entry ? page(entry) : list());
    return 0;
  },
};

/** What JSON can say of a function: all but the function itself. */
const data = (entry: Entry): object => ({ ...entry, call: undefined, reference: referenceOf(entry) });

/** Its place on the reference page as it lies here, for a browser. */
const referenceOf = ({ id }: Entry): string => new URL(`../reference-page/${REFERENCE_PAGE}${referencePlace(id)}`, import.meta.url).href;

const list = (): string =>
  Object.entries(groups)
    .map(([group, title]) => {
      const own = catalogue.filter((entry) => entry.group === group);
      return [title, ...own.map((entry) => `  ${entry.name.padEnd(24)}${entry.description}`)].join("\n");
    })
    .join("\n\n");

export const signature = (entry: Entry): string =>
  `${entry.name}(${entry.parameters.map((p) => (p.optional ? `[${p.name}]` : p.name)).join(", ")})`;

function page(entry: Entry): string {
  const parameters = entry.parameters.map(
    (p) => `  ${p.name.padEnd(18)}${p.description} Write ${p.wants}.${p.otherwise === null ? "" : ` If left out: ${p.otherwise}.`}`,
  );
  return [
    signature(entry),
    "",
    entry.description,
    ...(entry.caution ? ["", `Caution: ${entry.caution}`] : []),
    "",
    ...parameters,
    ...(parameters.length > 0 ? [""] : []),
    `Gives: ${entry.returns}${entry.spills ? " It spills over the cells beside and below." : ""}`,
    ...entry.examples.map(({ formula, shows }) => `Example: ${formula} shows ${shows}`),
    ...(entry.source ? [`Source: ${entry.source}`] : []),
    `Reference: ${referenceOf(entry)}`,
  ].join("\n");
}
