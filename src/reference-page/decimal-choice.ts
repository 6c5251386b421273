import { type Decimal, decimalIn, decimalNames, referencePlace } from "../catalogue/reference-address";

/** As the address asks, else as the browser's language writes numbers. */
const asked = (): Decimal => decimalIn(location.search) ?? (new Intl.NumberFormat(navigator.language).format(0.5).includes(",") ? "," : ".");

/** Writes the examples with one sign; works before there is a body, so that nothing is shown otherwise first. */
export function writeDecimal(decimal = asked()): void {
  document.documentElement.dataset["decimal"] = decimalNames[decimal];
}

/** Lets the reader choose; the address remembers it, for the reader's own bookmark. */
export function followDecimalChoice(): void {
  const choices = [...document.querySelectorAll<HTMLInputElement>("input[name=decimal]")];
  for (const choice of choices) {
    const decimal: Decimal = choice.value === decimalNames[","] ? "," : ".";
    choice.checked = document.documentElement.dataset["decimal"] === choice.value;
    choice.addEventListener("change", () => {
      writeDecimal(decimal);
      history.replaceState(null, "", location.pathname + referencePlace(null, decimal) + location.hash);
    });
  }
}
