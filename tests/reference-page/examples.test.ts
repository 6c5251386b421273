import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { inRepository } from "../../src/build/excel-files";
import { catalogue } from "../../src/catalogue/catalogue";
import { evaluate } from "../../src/engine/evaluate";
import { type OutcomeCell, isCellError } from "../../src/engine/outcome";

const page = readFileSync(inRepository("src/reference-page/reference.html"), "utf8");

type Sign = "point" | "comma";

interface Shown {
  readonly formula: string;
  readonly shows: string;
}

/** The examples as the page shows them to a reader who has chosen a sign. */
function examplesOn(article: string, sign: Sign): Shown[] {
  const list = /<ul class="examples">([^]*?)<\/ul>/.exec(article)?.[1] ?? "";
  return [...list.matchAll(/<li><code>([^]*?)<\/code> shows <output[^>]*>([^]*?)<\/output>/g)].map(([, formula = "", shows = ""]) => ({
    formula: visible(formula, sign),
    shows: visible(shows, sign),
  }));
}

function visible(html: string, sign: Sign): string {
  const other: Sign = sign === "point" ? "comma" : "point";
  const kept = html.replace(new RegExp(`<span class="in-${other}">[^]*?</span>`, "g"), "").replace(/<[^>]+>/g, "");
  return kept.replaceAll("&lt;", "<").replaceAll("&gt;", ">").replaceAll("&quot;", '"').replaceAll("&amp;", "&");
}

/** Reads a formula that is written with decimal commas letter by letter, as someone would who types it again with points. */
function retyped(formula: string): string {
  let isText = false;
  let braces = 0;
  return [...formula]
    .map((letter) => {
      if (letter === '"') isText = !isText;
      if (isText) return letter;
      if (letter === "{") braces++;
      if (letter === "}") braces--;
      if (letter === ",") return ".";
      if (letter === ";") return braces > 0 ? ";" : ",";
      return letter === "\\" && braces > 0 ? "," : letter;
    })
    .join("");
}

/** What the cell of the formula shows: of a spill, its first cell. */
function computed(formula: string): OutcomeCell {
  const outcome = evaluate(formula);
  return (Array.isArray(outcome) ? outcome.flat()[0] : outcome) as OutcomeCell;
}

function written(cell: OutcomeCell, sign: Sign): string {
  if (isCellError(cell)) return `${cell.error} ${cell.message}`;
  return typeof cell === "number" && sign === "comma" ? String(cell).replace(".", ",") : String(cell);
}

const articles = new Map([...page.matchAll(/<article id="([^"]+)"[^]*?<\/article>/g)].map(([article, id = ""]) => [id, article]));

describe("the reference page", () => {
  it("has an article for every function of the catalogue, in the order of the work, and none besides", () =>
    expect([...articles.keys()]).toEqual(catalogue.map(({ id }) => id)));

  it("shows the examples that the help has, and no other formula", () => {
    for (const { id, examples } of catalogue) expect(examplesOn(articles.get(id) ?? "", "point"), id).toEqual(examples);
    const formulas = [...page.matchAll(/<code>(?:<span class="in-point">)?=/g)];
    expect(formulas.length).toBe(catalogue.reduce((sum, { examples }) => sum + examples.length, 0));
  });

  it("writes a decimal comma wherever a number has a point, semicolons between arguments, and leaves texts alone", () => {
    expect(examplesOn(articles.get("ALLOYADD") ?? "", "comma")[1]).toEqual({ formula: '=LOT.ALLOYADD(450;"g";0,9;0,925;1)', shows: "150" });
    expect(examplesOn(articles.get("DROPRATE") ?? "", "comma")[0]).toEqual({ formula: "=LOT.DROPRATE({0;6;12;18;24};{1;0,5;0,25;0,125;0,0625})", shows: "0,115524…" });
    expect(examplesOn(articles.get("PAYOUT") ?? "", "comma")[0]).toEqual({ formula: '=LOT.PAYOUT(100;"ozt";24,5;"97.5%";0,5;25)', shows: "2315" });
  });

  const shown = (["point", "comma"] as const).flatMap((sign) => [...articles].flatMap(([, article]) => examplesOn(article, sign).map(({ formula, shows }) => ({ sign, formula, shows }))));
  it.each(shown)("with a decimal $sign $formula shows what the page says", ({ sign, formula, shows }) => {
    const told = written(computed(sign === "comma" ? retyped(formula) : formula), sign);
    expect(shows.endsWith("…") ? `${told.slice(0, shows.length - 1)}…` : told).toBe(shows);
  });

  it("has no script and no style in it: the policy of no page that serves it would let them run", () => {
    expect([...page.matchAll(/<script[^>]*>([^]*?)<\/script>/g)].map(([all]) => all)).toEqual(['<script src="reference.js"></script>']);
    expect(page).not.toMatch(/<style|\sstyle=|\son[a-z]+=/);
  });
});
