import { formFaults } from "./checks/form";
import { headFaults } from "./checks/head";
import { iconFaults } from "./checks/icons";
import { resourceFaults } from "./checks/resources";
import { runtimeFaults } from "./checks/runtime";
import { addressFaults, servedFaults } from "./checks/served";
import type { Surroundings } from "./fault";
import { orderFaults } from "./order";
import { type Element, readXml } from "./xml";

/** Everything that is wrong with a manifest, a sentence each; none where it is good. Reads no network. */
export function manifestFaults(text: string, surroundings: Surroundings): readonly string[] {
  let root: Element;
  try {
    root = readXml(text);
  } catch (error) {
    return [(error as Error).message];
  }
  const order = orderFaults(root);
  // The later checks look for elements in their places.
  return order.length > 0
    ? order
    : [
        ...formFaults(root),
        ...headFaults(root, surroundings),
        ...resourceFaults(root),
        ...runtimeFaults(root),
        ...addressFaults(root, surroundings),
        ...iconFaults(root, surroundings),
        ...servedFaults(root, surroundings),
      ];
}
