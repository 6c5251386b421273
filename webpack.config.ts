import type { Configuration } from "webpack";
import { excel } from "./src/build/bundles/excel";

/** Every bundle; each says its name. */
const bundles: readonly Configuration[] = [excel];

export default bundles;
