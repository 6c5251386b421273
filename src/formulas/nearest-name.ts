import { NAMESPACE, catalogue } from "../catalogue/catalogue";
import { nearest } from "./nearest";

/** What to say of a name that stands under our namespace and is none of our functions. */
export function unknownName(name: string): string {
  const nearest = nearestName(name);
  return nearest
    ? `Cannot find ${name}: did you mean ${nearest}`
    : `Cannot find ${name}: it is none of the ${NAMESPACE} functions: look for the right one in the list of all functions`;
}

/** The one of our names that is much like another; undefined where none is. */
export function nearestName(name: string): string | undefined {
  const id = nearest(name.slice(NAMESPACE.length + 1), catalogue.map((entry) => entry.id));
  return id === undefined ? undefined : `${NAMESPACE}.${id}`;
}
