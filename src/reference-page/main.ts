import { followDecimalChoice, writeDecimal } from "./decimal-choice";
import { findFunction } from "./find-function";

document.documentElement.dataset["script"] = "";
writeDecimal();
document.addEventListener("DOMContentLoaded", () => {
  followDecimalChoice();
  findFunction();
});
