/** The files of src/functions that hold cell functions, in the order of the work, and what they are called on a page. */
export const groups = {
  weights: "Weights and fineness",
  assay: "Samples and assays",
  dissolve: "Dissolving",
  drop: "Dropping with copper",
  wash: "Washing and spent liquor",
  melt: "Melting and the cell",
  cost: "Cost",
  recovery: "Recovery and the metal balance",
  payout: "Payout",
  columns: "Columns at once",
  about: "About the tool",
} as const;

export type Group = keyof typeof groups;
