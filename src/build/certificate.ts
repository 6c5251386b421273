import { existsSync, readFileSync } from "node:fs";
import { homedir } from "node:os";
import { join } from "node:path";
import { getHttpsServerOptions } from "office-addin-dev-certs";

/** Where office-addin-dev-certs keeps what it makes; it names the folder only when all goes well. */
const kept = (name: string): string => join(homedir(), ".office-addin-dev-certs", name);
const authorityPath = kept("ca.crt");
const certificatePath = kept("localhost.crt");
const keyPath = kept("localhost.key");

export interface Certificate {
  readonly cert: Buffer;
  readonly key: Buffer;
  /** What is still to be done before Excel trusts it. */
  readonly advice: string | null;
}

/** A certificate for this machine alone, made and entrusted to the system where that can be done. */
export async function developmentCertificate(): Promise<Certificate> {
  try {
    const { cert, key } = await getHttpsServerOptions();
    return { cert, key, advice: null };
  } catch (error) {
    const why = (error as Error).message.split("\n")[0] ?? "";
    if (![certificatePath, keyPath].every((path) => existsSync(path)))
      throw new Error(`Cannot make a certificate for https://localhost: ${why}`);
    const advice = `The certificate was made, but this system did not take it as trusted (${why}).\nExcel loads nothing from here until it does: ${trustByHand()}\nIt is good for this machine alone and for 30 days.`;
    return { cert: readFileSync(certificatePath), key: readFileSync(keyPath), advice };
  }
}

function trustByHand(): string {
  switch (process.platform) {
    case "win32":
      return `open ${authorityPath}, choose Install Certificate, Current User, and the store Trusted Root Certification Authorities.`;
    case "darwin":
      return `open ${authorityPath} in Keychain Access, and set its Trust to Always Trust.`;
    default:
      return `give ${authorityPath} to the browser in which Excel on the web runs, as an authority that may identify websites.`;
  }
}
