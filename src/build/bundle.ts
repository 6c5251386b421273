import webpack, { type Configuration, type StatsCompilation } from "webpack";

/** Runs webpack; an error or a warning of its own stops the build. */
export async function bundle(configuration: Configuration): Promise<StatsCompilation> {
  const compiler = webpack(configuration);
  const stats = await new Promise<webpack.Stats>((resolve, reject) => {
    compiler.run((error, done) => (done ? resolve(done) : reject(error)));
  });
  await new Promise((resolve) => compiler.close(resolve));
  const told = stats.toJson({ all: false, errors: true, warnings: true, modules: true, nestedModules: true, assets: true });
  const faults = [...(told.errors ?? []), ...(told.warnings ?? [])].map(({ message, moduleName }) => `${moduleName ?? ""} ${message}`.trim());
  if (faults.length > 0) throw new Error(`Cannot bundle ${configuration.name}:\n${faults.join("\n")}`);
  return told;
}
