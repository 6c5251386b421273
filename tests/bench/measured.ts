import { cents } from "./cents";
import { columns } from "./columns";
import { engines } from "./engines";
import { file } from "./file";
import { singles } from "./singles";

/** Runs bundled, as Excel's page does: the loader of the tests gives every function a name, which costs a third of a short one. */
const [part, payoutsMs, folder] = process.argv.slice(2);
const parts: Readonly<Record<string, () => unknown>> = {
  columns,
  singles,
  cents,
  file,
  engines: () => engines(Number(payoutsMs), folder ?? ""),
};
const result = await parts[part ?? ""]?.();
process.stdout.write(`\n${JSON.stringify(result)}\n`);
