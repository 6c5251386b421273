import type { Parameter, Texts } from "./entry";
import { groups } from "./groups";
import type { OutsideCheck, OutsideChecks } from "./outside";

/** The reference page: every function with its arguments, ranges, errors, examples and outside checks. It stands alone and prints. */
export function reference(texts: readonly Texts[], checks: OutsideChecks): string {
  const sections = Object.entries(groups).map(([group, title]) => {
    const own = texts.filter((t) => t.group === group);
    return `<section><h2 id="${group}">${text(title)}</h2>\n${own.map((t) => article(t, checks.get(t.id) ?? [])).join("\n")}\n</section>`;
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
<p>“Held against” lists what the arithmetic of a function was compared with that is not ours. What is from memory or common practice says so, and decides nothing alone.</p>
<nav>${texts.map((t) => `<a href="#${t.id}">${t.id}</a>`).join(" ")}</nav>
</header>
<main>
${sections.join("\n")}
</main>
</body>
</html>
`;
}

function article(t: Texts, held: readonly OutsideCheck[]): string {
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
${outsideList(held)}
</article>`;
}

/** So many checks stand open; the rest unfolds, and prints. */
const SHOWN = 3;

function outsideList(held: readonly OutsideCheck[]): string {
  const list = (checks: readonly OutsideCheck[]): string => `<ul>\n${checks.map((c) => `<li>${text(c.check)} <span>${text(c.source)}</span></li>`).join("\n")}\n</ul>`;
  const more = held.slice(SHOWN);
  return `<div class="held"><p><b>Held against</b></p>\n${list(held.slice(0, SHOWN))}${more.length > 0 ? `\n<details><summary>and ${more.length} more</summary>\n${list(more)}\n</details>` : ""}</div>`;
}

const row = (p: Parameter): string =>
  `<tr><td>${text(p.name)}</td><td>${text(p.description)}</td><td>${text(p.wants)}</td><td>${p.optional ? text(p.otherwise ?? "") : ""}</td></tr>`;

const text = (raw: string): string => raw.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
