export interface Sample {
  /** The file's name within the folder samples. */
  readonly file: string;
  readonly title: string;
}

export const samples = async (): Promise<readonly Sample[]> => (await (await fetched("samples/index.json")).json()) as Sample[];

export const sampleBytes = async ({ file }: Sample): Promise<Uint8Array> => new Uint8Array(await (await fetched(`samples/${file}`)).arrayBuffer());

async function fetched(path: string): Promise<Response> {
  const response = await fetch(path).catch(() => null);
  if (!response?.ok) throw new Error(`Cannot load ${path}: start Lotwright again with npm start, then load this page again`);
  return response;
}
