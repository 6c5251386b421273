/** The base units in which the core holds its numbers. */
export const grams = { unit: "g" } as const;
export const troyOunces = { unit: "ozt" } as const;
export const litres = { unit: "L" } as const;
export const moles = { unit: "mol" } as const;
/** A part of one, for which a sheet may show a percentage. */
export const share = { unit: "" } as const;
/** Grams of fine metal per gram of alloy, 0 to 1. */
export const fineness = { unit: "g/g" } as const;
/** The same in parts per thousand: assays that are compared stay on the scale on which they are written. */
export const perThousand = { unit: "‰" } as const;
export const count = { unit: "" } as const;
export const money = { unit: "" } as const;
export const moneyPerTroyOunce = { unit: "per ozt" } as const;
/** An amount in whatever one unit the sheet uses throughout. */
export const amount = { unit: "" } as const;
export const hours = { unit: "h" } as const;
export const litresPerHour = { unit: "L/h" } as const;
export const gramsPerLitre = { unit: "g/L" } as const;
export const amperes = { unit: "A" } as const;
export const volts = { unit: "V" } as const;
/** Days since the start of a spreadsheet's calendar. */
export const dateTime = { unit: "" } as const;
