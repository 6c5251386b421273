import { REFERENCE_PAGE } from "../catalogue/reference-address";

/** The reference page and what it loads, by its name where it is served; it works where it lies in the repository too. */
export const referenceFiles: Readonly<Record<string, string>> = {
  [REFERENCE_PAGE]: "src/reference-page/reference.html",
  "reference.css": "src/reference-page/reference.css",
  "reference.js": "src/reference-page/reference.js",
};
