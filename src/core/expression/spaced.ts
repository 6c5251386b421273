/** camelCase to words: freeAcid is written "free acid". */
export const spaced = (name: string): string => name.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);
