/** What a number shows, as a spreadsheet writes it. */
export const formats = {
  general: "General",
  count: "0",
  weight: "#,##0.00",
  ozt: "#,##0.000",
  money: "#,##0.00",
  moneyPerOunce: "0.000",
  price: "#,##0.0000",
  share: "0.0%",
  ppt: "0.0",
  constant: "0.0000000",
  date: "yyyy-mm-dd",
} as const;

export type Format = keyof typeof formats;
