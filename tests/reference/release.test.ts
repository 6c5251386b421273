import { expect, it } from "vitest";
import packageJson from "../../package.json";
import weights from "../../shared/tables/atomic-weights.json";
import { find } from "../../src/catalogue/catalogue";
import { program } from "../program";

it.each(program("release").functions)("%s says the release in package.json and the edition of the atomic weights", (id) =>
  expect(find(id)?.call().value()).toBe(`Lotwright ${packageJson.version}, atomic weights ${weights.edition}`));
