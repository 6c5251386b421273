/** Whether this Excel has a set of its interface for add-ins. */
export const knows = (set: "1.10" | "1.13" | "1.18"): boolean => Office.context.requirements.isSetSupported("ExcelApi", set);
