// Written by src/build/write-reference.ts from src/reference-page/main.ts: change that instead.
"use strict";
(() => {
  // src/catalogue/reference-address.ts
  var decimalNames = { ".": "point", ",": "comma" };
  var referencePlace = (id, decimal) => (decimal === void 0 ? "" : `?decimal=${decimalNames[decimal]}`) + (id === null ? "" : `#${id}`);
  function decimalIn(query) {
    const asked2 = new URLSearchParams(query).get("decimal");
    return asked2 === decimalNames["."] ? "." : asked2 === decimalNames[","] ? "," : null;
  }

  // src/reference-page/decimal-choice.ts
  var asked = () => decimalIn(location.search) ?? (new Intl.NumberFormat(navigator.language).format(0.5).includes(",") ? "," : ".");
  function writeDecimal(decimal = asked()) {
    document.documentElement.dataset["decimal"] = decimalNames[decimal];
  }
  function followDecimalChoice() {
    const choices2 = [...document.querySelectorAll("input[name=decimal]")];
    for (const choice of choices2) {
      const decimal = choice.value === decimalNames[","] ? "," : ".";
      choice.checked = document.documentElement.dataset["decimal"] === choice.value;
      choice.addEventListener("change", () => {
        writeDecimal(decimal);
        history.replaceState(null, "", location.pathname + referencePlace(null, decimal) + location.hash);
      });
    }
  }

  // src/pane/dom.ts
  function h(tag, attributes = {}, ...children) {
    const element = document.createElement(tag);
    for (const [name, value] of Object.entries(attributes)) {
      if (typeof value === "function") element.addEventListener(name.slice(2), value);
      else if (value === true) element.setAttribute(name, "");
      else if (value !== void 0 && value !== false) element.setAttribute(name, String(value));
    }
    element.append(...present(children));
    return element;
  }
  var fill = (element, ...children) => element.replaceChildren(...present(children));
  var present = (children) => children.filter((child) => child !== null);
  var count = 0;
  var freshId = (what) => `lot-${what}-${++count}`;

  // src/pane/all-functions/marked.ts
  function marked(text, spans) {
    const children = [];
    let at = 0;
    for (const [start, end] of spans) {
      children.push(text.slice(at, start), h("mark", {}, text.slice(start, end)));
      at = end;
    }
    return [...children, text.slice(at)];
  }

  // src/catalogue/groups.ts
  var groups = {
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
    about: "About the tool"
  };

  // src/core/expression/spaced.ts
  var spaced = (name) => name.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);

  // src/pane/all-functions/suggestions.ts
  var BEFORE = /^(?:a column or one value, each |a range, each cell )?(?:one of |[^:",]+: )?/;
  var CHOICE = /^(?!an? )[\p{L}\p{N}%/]+(?: [\p{L}\p{N}]+){0,2}$/u;
  function choices(wants) {
    const listed = wants.replace(BEFORE, "").split(", ");
    return listed.length > 1 && listed.every((choice) => CHOICE.test(choice)) ? listed : [];
  }
  function suggestions(wants) {
    const known = choices(wants);
    return known.length > 0 ? known : [...wants.matchAll(/"([^"]+)"/g)].map(([, example = ""]) => example);
  }

  // src/pane/all-functions/words.ts
  var wordsIn = (text) => [...text.matchAll(/[\p{L}\p{N}%‰]+/gu)].map(({ 0: word, index }) => ({ text: folded(word), start: index, end: index + word.length }));
  var folded = (word) => word.normalize("NFD").replace(/\p{M}/gu, "").toLowerCase();
  function isNearly(a, b) {
    if (Math.abs(a.length - b.length) > 1) return false;
    let start = 0;
    while (start < a.length && a[start] === b[start]) start++;
    const [restA, restB] = [a.slice(start), b.slice(start)];
    const swapped = restA.length > 1 && restA[0] === restB[1] && restA[1] === restB[0] && restA.slice(2) === restB.slice(2);
    return swapped || restA.slice(1) === restB.slice(1) || restA.slice(1) === restB || restA === restB.slice(1);
  }

  // src/pane/all-functions/search.ts
  function search(entries, query) {
    const asked2 = meant(wordsIn(query).map(({ text }) => text));
    if (asked2.length === 0) return entries.map((entry) => ({ entry, score: 0, inName: [], inDescription: [], by: [] }));
    const found = entries.map((entry) => best(readings(asked2).map((tokens) => hit(entry, tokens))));
    const whole = found.filter(({ missed }) => missed <= Math.floor(asked2.length / 3));
    const kept = (whole.length > 0 ? whole : found.filter(({ score }) => score > 0)).sort((a, b) => b.score - a.score);
    const [top] = kept;
    return top ? kept.filter(({ score }) => score >= top.score * FAINT) : [];
  }
  var FAINT = 0.35;
  var EMPTY_WORDS = new Set("a an and are can do does for from get have how i in is it many me much my need of on or that the to what when with".split(" "));
  var meant = (words) => {
    const telling = words.filter((word) => !EMPTY_WORDS.has(word));
    return telling.length > 0 ? telling : words;
  };
  var readings = (words) => [
    words,
    ...words.slice(1).map((word, i) => [...words.slice(0, i), `${words[i]}${word}`, ...words.slice(i + 2)])
  ];
  var best = (hits) => hits.reduce((a, b) => b.missed < a.missed || b.missed === a.missed && b.score > a.score ? b : a);
  function hit(entry, tokens) {
    const scores = tokens.map((token) => tokenScore(entry, token));
    const spans = (text) => tokens.flatMap((token) => wordsIn(text).flatMap((word) => span(token, word)));
    const inName = [...spans(entry.name), ...tokens.flatMap((token) => within(entry.name, token))];
    return {
      entry,
      // The average, so that two words read as one weigh as much as both.
      score: scores.reduce((sum, score) => sum + score, 0) / tokens.length,
      missed: scores.filter((score) => score === 0).length,
      inName: merged(inName),
      inDescription: merged(spans(entry.description)),
      by: entry.words.filter((word) => tokens.some((token) => likeness(token, word.toLowerCase()) > 0))
    };
  }
  function tokenScore(entry, token) {
    const among = (weight, text) => weight * Math.max(0, ...wordsIn(text).map((word) => likeness(token, word.text)));
    return Math.max(
      among(10, entry.id),
      within(entry.name, token).length > 0 ? 5 : 0,
      among(7, entry.words.join(" ")),
      among(4, entry.description),
      among(3, groups[entry.group]),
      among(2, entry.returns),
      ...entry.parameters.map(({ name, description }) => among(2, `${name} ${spaced(name)} ${description}`)),
      ...entry.parameters.map(({ wants }) => among(1, suggestions(wants).join(" ")))
    );
  }
  function likeness(token, word) {
    if (token === word) return 1;
    if (word.startsWith(token)) return 0.8;
    if (word.length >= 3 && token.startsWith(word) && token.length - word.length <= 2) return 0.7;
    return token.length >= 4 && isNearly(token, word) ? 0.5 : 0;
  }
  function span(token, { text, start, end }) {
    if (likeness(token, text) === 0) return [];
    return [[start, text.startsWith(token) ? start + token.length : end]];
  }
  function within(name, token) {
    const at = token.length >= 3 ? name.toLowerCase().indexOf(token, name.indexOf(".") + 1) : -1;
    return at >= 0 ? [[at, at + token.length]] : [];
  }
  function merged(spans) {
    const result = [];
    for (const [start, end] of [...spans].sort((a, b) => a[0] - b[0])) {
      const last = result[result.length - 1];
      if (last && start <= last[1]) result[result.length - 1] = [last[0], Math.max(last[1], end)];
      else result.push([start, end]);
    }
    return result;
  }
  function grouped(hits) {
    const order = Object.keys(groups);
    return order.map((group) => ({ title: groups[group], hits: hits.filter(({ entry }) => entry.group === group) })).filter((group) => group.hits.length > 0).sort((a, b) => (b.hits[0]?.score ?? 0) - (a.hits[0]?.score ?? 0));
  }

  // src/pane/all-functions/finder.ts
  var TRIES = ["weight", "copper", "payout"];
  function finder(entries, { label, memory, row, choose }) {
    const results = h("div", { class: "lw-results" });
    const count2 = h("p", { class: "lw-count", role: "status" });
    const input = h("input", { type: "search", id: freshId("search"), autocomplete: "off", spellcheck: "false", placeholder: "how much copper" });
    input.value = memory.query;
    let first = null;
    function find() {
      memory.query = input.value;
      const hits = search(entries, input.value);
      const groups2 = grouped(hits);
      first = groups2[0]?.hits[0]?.entry ?? null;
      fill(results, ...groups2.length > 0 ? groups2.map((group) => groupOf(group, row)) : [nothingFound(input.value, tryWord)]);
      count2.textContent = groups2.length === 0 ? "" : hits.length === 1 ? "1 function" : `${hits.length} functions`;
    }
    function tryWord(word) {
      input.value = word;
      find();
      input.focus();
    }
    const rows = () => [...results.querySelectorAll(".lw-hit")];
    function onKey2(event) {
      const all = [input, ...rows()];
      const at = all.findIndex((one) => one === document.activeElement);
      const to = { ArrowDown: at + 1, ArrowUp: at - 1, Home: 1, End: all.length - 1 }[event.key];
      const isTyping = at === 0 && event.key !== "ArrowDown";
      if (to === void 0 || at < 0 || isTyping) {
        if (at === 0) onInputKey(event);
        return;
      }
      event.preventDefault();
      all[Math.max(0, Math.min(to, all.length - 1))]?.focus();
    }
    function onInputKey(event) {
      if (event.key === "Enter" && first) {
        event.preventDefault();
        choose(first);
      } else if (event.key === "Escape" && input.value !== "") {
        event.preventDefault();
        tryWord("");
      }
    }
    input.addEventListener("input", find);
    input.addEventListener("keydown", onKey2);
    results.addEventListener("keydown", onKey2);
    find();
    return { search: h("div", { class: "lw-search", role: "search" }, h("label", { for: input.id }, label), input, count2), results, input, rows };
  }
  function groupOf({ title, hits }, row) {
    const id = freshId("group");
    return h("section", { "aria-labelledby": id }, h("h2", { id }, title), h("ul", { class: "lw-hits" }, ...hits.map((hit2) => h("li", {}, row(hit2)))));
  }
  function hitParts({ entry, inName, inDescription, by }) {
    const isShown = inName.length > 0 || inDescription.length > 0;
    return [
      h("span", { class: "lw-name" }, ...marked(entry.name, inName)),
      h("span", { class: "lw-about" }, ...marked(entry.description, inDescription)),
      isShown || by.length === 0 ? null : h("span", { class: "lw-by" }, "found by ", h("mark", {}, by.join(", ")))
    ];
  }
  function nothingFound(query, tryWord) {
    const words = TRIES.flatMap((word, i) => [i > 0 ? ", " : "", h("button", { type: "button", class: "lw-word", onclick: () => tryWord(word) }, word)]);
    return h("p", { class: "lw-nothing", role: "status" }, `No function for “${query.trim()}”: try `, ...words);
  }

  // src/reference-page/functions-on.ts
  var functionsOn = (page) => [...page.querySelectorAll("article")].map(functionIn);
  function functionIn(article) {
    return {
      id: article.id,
      name: textOf(article, "h3"),
      description: textOf(article, ".description"),
      returns: textOf(article, ".returns"),
      group: article.closest("section")?.id,
      words: article.dataset["words"]?.split(" ").filter((word) => word !== "") ?? [],
      parameters: [...article.querySelectorAll("tbody tr")].map((row) => {
        const [name = "", description = "", wants = ""] = [...row.children].map((cell) => cell.textContent);
        return { name, description, wants };
      })
    };
  }
  var textOf = (article, selector) => article.querySelector(selector)?.textContent ?? "";

  // src/reference-page/find-function.ts
  function findFunction() {
    const panel = document.querySelector(".finder");
    const found = finder(functionsOn(document), {
      label: "Find a function",
      memory: { query: "" },
      row: (hit2) => marked2(h("a", { class: "lw-hit", href: `#${hit2.entry.id}` }, ...hitParts(hit2))),
      choose: ({ id }) => rowOf(id)?.click()
    });
    const rowOf = (id) => found.rows().find((row) => row.getAttribute("href") === `#${id}`);
    function open() {
      panel.dataset["open"] = "";
    }
    function close() {
      delete panel.dataset["open"];
    }
    panel.querySelector(".search")?.replaceChildren(found.search);
    panel.querySelector(".results")?.replaceChildren(found.results);
    found.input.setAttribute("aria-keyshortcuts", "/");
    found.input.addEventListener("focus", open);
    found.input.addEventListener("input", open);
    found.results.addEventListener("click", (event) => {
      const row = event.target.closest("a.lw-hit");
      if (!row) return;
      close();
      setTimeout(() => document.getElementById(row.hash.slice(1))?.querySelector("h3")?.focus({ preventScroll: true }));
    });
    document.addEventListener("pointerdown", ({ target }) => {
      if (!panel.contains(target)) close();
    });
    document.addEventListener("focusin", ({ target }) => {
      if (!panel.contains(target)) close();
    });
    document.addEventListener("keydown", (event) => onKey(event, found, close));
    window.addEventListener("hashchange", () => found.rows().forEach(marked2));
  }
  function marked2(row) {
    if (row.getAttribute("href") === location.hash) row.setAttribute("aria-current", "true");
    else row.removeAttribute("aria-current");
    return row;
  }
  function onKey(event, { input, results }, close) {
    const isTyping = event.target instanceof HTMLInputElement && event.target.type !== "radio";
    if (event.key === "/" && !isTyping && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault();
      input.focus();
      input.select();
    } else if (event.key === "Escape" && !event.defaultPrevented) {
      if (results.contains(document.activeElement)) input.focus();
      else close();
    }
  }

  // src/reference-page/main.ts
  document.documentElement.dataset["script"] = "";
  writeDecimal();
  document.addEventListener("DOMContentLoaded", () => {
    followDecimalChoice();
    findFunction();
  });
})();
