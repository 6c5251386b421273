import { bundle } from "./bundle";
import { host } from "./bundles/host";

await bundle(host);
