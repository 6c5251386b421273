import type { Parameter, Texts } from "./entry";
import { groups } from "./groups";

/** The reference page: every function with its arguments, ranges, errors and examples. It stands alone and prints. */
export function reference(texts: readonly Texts[]): string {
  const sections = Object.entries(groups).map(([group, title]) => {
    const own = texts.filter((t) => t.group === group);
    return `<section><h2 id="${group}">${text(title)}</h2>\n${own.map(article).join("\n")}\n</section>`;
  });
  return `<!doctype html>
<!-- Written by src/catalogue/generate.ts from the comments in src/functions: change those instead. -->
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Lotwright functions</title>
<link rel="stylesheet" href="reference.css">
</head>
<body>
<header>
<h1>Lotwright functions</h1>
<p>Every function, with what its arguments must be. An error shows in the cell as #VALUE! or, where a name is not known or something is still to come, as #N/A; its message names the argument, what it was and what to write instead.</p>
<nav>${texts.map((t) => `<a href="#${t.id}">${t.id}</a>`).join(" ")}</nav>
</header>
<main>
${sections.join("\n")}
</main>
</body>
</html>
`;
}

function article(t: Texts): string {
  const signature = t.parameters.map((p) => (p.optional ? `[${p.name}]` : p.name)).join(", ");
  return `<article id="${t.id}">
<h3>${t.name}<span>(${text(signature)})</span></h3>
<p>${text(t.description)}</p>
${t.caution ? `<p class="caution">${text(t.caution)}</p>` : ""}
${t.parameters.length > 0 ? `<table><thead><tr><th>argument</th><th>what it is</th><th>write</th><th>if left out</th></tr></thead><tbody>\n${t.parameters.map(row).join("\n")}\n</tbody></table>` : ""}
<p><b>Gives</b> ${text(t.returns)}${t.spills ? " It spills over the cells beside and below." : ""}</p>
<ul class="examples">
${t.examples.map((e) => `<li><code>${text(e.formula)}</code> shows <output>${text(e.shows)}</output></li>`).join("\n")}
</ul>
${t.source ? `<p class="source">Source: ${text(t.source)}</p>` : ""}
</article>`;
}

const row = (p: Parameter): string =>
  `<tr><td>${text(p.name)}</td><td>${text(p.description)}</td><td>${text(p.wants)}</td><td>${p.optional ? text(p.otherwise ?? "") : ""}</td></tr>`;

const text = (raw: string): string => raw.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
