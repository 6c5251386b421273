import type { Example, Parameter, Texts } from "../catalogue/entry";
import { groups } from "../catalogue/groups";
import type { OutsideCheck, OutsideChecks } from "../catalogue/outside";
import { localFormula } from "../pane/local-formula";
import { localResult } from "../pane/local-result";
import { type Notation, portNotation, userNotation } from "../pane/notation";

/**
 * The page may load nothing but its style and its script, which lie beside it. A page that is opened from a disk has no
 * origin of its own: there the scheme says what is beside it.
 */
const POLICY = "default-src 'none'; script-src 'self' file:; style-src 'self' file:; img-src data:; base-uri 'none'; form-action 'none'";

/** The reference page: every function with its arguments, ranges, errors, examples and outside checks. It is whole without its script, and prints. */
export function referencePage(texts: readonly Texts[], checks: OutsideChecks, icon: Buffer): string {
  const steps = Object.entries(groups).map(([group, title]) => ({ group, title, own: texts.filter((t) => t.group === group) }));
  return `<!doctype html>
<!-- Written by src/build/write-reference.ts from the comments in src/functions: change those instead. -->
<html lang="en" data-decimal="point">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<title>Lotwright functions</title>
<link rel="icon" href="data:image/png;base64,${icon.toString("base64")}">
<link rel="stylesheet" href="reference.css">
<script src="reference.js"></script>
</head>
<body>
<a class="skip" href="#functions">Skip to the functions</a>
<aside class="finder" aria-label="Search">
<div class="search"></div>
<fieldset class="decimal">
<legend>Formulas with</legend>
<label><input type="radio" name="decimal" value="point" checked> point <span>1.5, 2</span></label>
<label><input type="radio" name="decimal" value="comma"> comma <span>1,5; 2</span></label>
</fieldset>
<div class="results"></div>
</aside>
<main>
<header>
<h1>Lotwright functions</h1>
<p>Every function, with what its arguments must be. An error shows in the cell as #VALUE! or, where a name is not known or something is still to come, as #N/A; its message names the argument, what it was and what to write instead.</p>
<p>“Held against” lists what the arithmetic of a function was compared with that is not ours. What is from memory or common practice says so, and decides nothing alone.</p>
</header>
<nav class="contents" aria-label="Contents">
${steps.map(({ group, title, own }) => `<div><h2><a href="#${group}">${text(title)}</a></h2>\n<ul>\n${own.map(contentsRow).join("\n")}\n</ul></div>`).join("\n")}
</nav>
<div id="functions" tabindex="-1">
${steps.map(({ group, title, own }) => `<section id="${group}"><h2>${text(title)}</h2>\n${own.map((t) => article(t, checks.get(t.id) ?? [])).join("\n")}\n</section>`).join("\n")}
</div>
</main>
</body>
</html>
`;
}

const contentsRow = ({ id, name, description }: Texts): string => `<li><a href="#${id}">${name}</a> <span>${text(description)}</span></li>`;

function article(t: Texts, held: readonly OutsideCheck[]): string {
  const signature = t.parameters.map((p) => (p.optional ? `[${p.name}]` : p.name));
  return `<article id="${t.id}" aria-labelledby="${t.id}-name" data-words="${text(t.words.join(" "))}">
<h3 id="${t.id}-name" tabindex="-1"><a href="#${t.id}">${t.name}</a></h3>
<p class="signature"><code>${inBoth((notation) => `${t.name}(${signature.join(`${notation.separator} `)})`)}</code></p>
<p class="description">${text(t.description)}</p>
${t.caution ? `<p class="caution"><b>Caution</b> ${text(t.caution)}</p>` : ""}
${t.parameters.length > 0 ? `<table>\n<thead><tr><th scope="col">argument</th><th scope="col">what it is</th><th scope="col">write</th><th scope="col">if left out</th></tr></thead>\n<tbody>\n${t.parameters.map(row).join("\n")}\n</tbody>\n</table>` : ""}
<p><b>Gives</b> <span class="returns">${text(t.returns)}</span>${t.spills ? " It spills over the cells beside and below." : ""}</p>
<ul class="examples">
${t.examples.map((e) => exampleRow(e, t.spills)).join("\n")}
</ul>
${t.source ? `<p class="source">Source: ${text(t.source)}</p>` : ""}
${outsideList(held)}
</article>`;
}

const row = (p: Parameter): string =>
  `<tr><th scope="row">${text(p.name)}</th><td>${text(p.description)}</td><td>${text(p.wants)}</td><td>${p.optional ? text(p.otherwise ?? "") : ""}</td></tr>`;

const exampleRow = ({ formula, shows }: Example, spills: boolean): string =>
  `<li><code>${inBoth((notation) => localFormula(formula, notation))}</code> shows ${shown(shows)}${spills ? " in its first cell" : ""}</li>`;

/** An error's code and its sentence, or a value. */
function shown(shows: string): string {
  const [, code, sentence] = /^(#\S+[!A])( .*)$/.exec(shows) ?? [];
  if (code === undefined || sentence === undefined) return `<output>${inBoth((notation) => localResult(shows, notation))}</output>`;
  return `<output class="told"><b>${text(code)}</b>${text(sentence)}</output>`;
}

/** With a decimal point and with a decimal comma; the style shows the one that is chosen. */
function inBoth(write: (notation: Notation) => string): string {
  const [point, comma] = [write(portNotation), write(userNotation({ decimal: ",", separator: ";" }))];
  return point === comma ? text(point) : `<span class="in-point">${text(point)}</span><span class="in-comma">${text(comma)}</span>`;
}

/** So many checks stand open; the rest unfolds, and prints. */
const SHOWN = 3;

function outsideList(held: readonly OutsideCheck[]): string {
  const list = (checks: readonly OutsideCheck[]): string => `<ul>\n${checks.map((c) => `<li>${text(c.check)} <span>${text(c.source)}</span></li>`).join("\n")}\n</ul>`;
  const more = held.slice(SHOWN);
  return `<div class="held"><p><b>Held against</b></p>\n${list(held.slice(0, SHOWN))}${more.length > 0 ? `\n<details><summary>and ${more.length} more</summary>\n${list(more)}\n</details>` : ""}</div>`;
}

const text = (raw: string): string => raw.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
