/** Checks the manifest in the repository, offline: a sentence for each fault, and a failing exit. */
import { manifestFaults } from "./check";
import { repositoryManifest, repositorySurroundings } from "./repository";

const faults = manifestFaults(repositoryManifest, repositorySurroundings);
for (const fault of faults) console.error(fault);
if (faults.length > 0) process.exitCode = 1;
else console.log("manifest: no fault");
