import { h } from "../dom";
import type { Page } from "../page";
import { LICENCE_FILES, type Licence } from "./licence";

/** Every package that comes with the page, with the text of its licence. */
export function licencesPage(licences: readonly Licence[], leave: () => void): Page {
  const heading = h("h1", { tabindex: -1 }, "Licences");
  return {
    element: h(
      "div",
      { class: "lw-page lw-licences" },
      h("div", { class: "lw-top" }, h("button", { type: "button", class: "lw-back", onclick: leave }, "All tasks"), heading),
      h("p", {}, "What comes with this page, and under whose licence. The same list is the file ", h("a", { href: LICENCE_FILES.text, target: "_blank", rel: "noopener" }, LICENCE_FILES.text), " beside it."),
      h("ul", { class: "lw-licence-list" }, ...licences.map((one) => h("li", {}, licenceView(one)))),
    ),
    focus: () => heading.focus({ preventScroll: true }),
    back: leave,
    close: () => undefined,
  };
}

const licenceView = ({ name, version, licence, notice, text }: Licence): HTMLElement =>
  h(
    "section",
    { "aria-label": name },
    h("h2", {}, `${name} ${version}`),
    h("p", { class: "lw-about" }, licence),
    notice === null ? null : h("p", { class: "lw-lines" }, notice),
    h("details", {}, h("summary", {}, `Licence of ${name}`), h("pre", { class: "lw-licence-text", tabindex: 0 }, text)),
  );
