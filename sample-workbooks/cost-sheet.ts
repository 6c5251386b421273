import { consumables } from "./cost-sheet/consumables";
import { lots } from "./cost-sheet/lots";
import { names, prices } from "./cost-sheet/prices";
import { readMe } from "./cost-sheet/read-me";
import { settlement } from "./cost-sheet/settlement";
import type { Book } from "./write/book";

/** One month of an invented two-person silver shop. */
export const costSheet: Book = {
  title: "Cost sheet of an invented silver shop",
  subject: "A sample workbook: shop, clients, lots and prices are invented",
  creator: "Lotwright",
  date: "2026-04-01",
  names,
  sheets: [readMe, lots, consumables, settlement, prices],
};
