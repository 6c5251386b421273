export function isThisMachine(host: string | undefined): boolean;
