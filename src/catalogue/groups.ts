/** The files of src/functions that hold cell functions, in the order of the work, and what they are called on a page. */
export const groups = {
  weights: "Weights and fineness",
  drop: "Dropping with copper",
  cost: "Cost",
  recovery: "Recovery and the metal balance",
  payout: "Payout",
  about: "About the tool",
} as const;

export type Group = keyof typeof groups;
