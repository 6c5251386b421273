import type { Parameter, Texts } from "../../catalogue/entry";
import { type Group, groups } from "../../catalogue/groups";
import { spaced } from "../../core/expression/spaced";
import { suggestions } from "./suggestions";
import { type Word, isNearly, wordsIn } from "./words";

/** What the search looks at. */
export interface Findable extends Pick<Texts, "id" | "name" | "description" | "returns" | "group" | "words"> {
  readonly parameters: readonly Pick<Parameter, "name" | "description" | "wants">[];
}

export type Span = readonly [start: number, end: number];

/** A function that was found, and what of it the search hit. */
export interface Hit<T extends Findable = Findable> {
  readonly entry: T;
  readonly score: number;
  readonly inName: readonly Span[];
  readonly inDescription: readonly Span[];
  /** Words of the trade that found it. */
  readonly by: readonly string[];
}

/** The best first; every entry, in its order, for a search without words. */
export function search<T extends Findable>(entries: readonly T[], query: string): readonly Hit<T>[] {
  const asked = meant(wordsIn(query).map(({ text }) => text));
  if (asked.length === 0) return entries.map((entry) => ({ entry, score: 0, inName: [], inDescription: [], by: [] }));
  const found = entries.map((entry) => best(readings(asked).map((tokens) => hit(entry, tokens))));
  // Of three words or more one may be foreign to a function.
  const whole = found.filter(({ missed }) => missed <= Math.floor(asked.length / 3));
  const kept = (whole.length > 0 ? whole : found.filter(({ score }) => score > 0)).sort((a, b) => b.score - a.score);
  const [top] = kept;
  return top ? kept.filter(({ score }) => score >= top.score * FAINT) : [];
}

/** What fits so much less than the best is left out. */
const FAINT = 0.35;

/** Words that say nothing about the matter, unless nothing else was asked. */
const EMPTY_WORDS = new Set("a an and are can do does for from get have how i in is it many me much my need of on or that the to what when with".split(" "));

const meant = (words: readonly string[]): readonly string[] => {
  const telling = words.filter((word) => !EMPTY_WORDS.has(word));
  return telling.length > 0 ? telling : words;
};

/** The words as they were typed, and with any two neighbours as one: "penny weight" is "pennyweight". */
const readings = (words: readonly string[]): readonly (readonly string[])[] => [
  words,
  ...words.slice(1).map((word, i) => [...words.slice(0, i), `${words[i]}${word}`, ...words.slice(i + 2)]),
];

interface Scored<T extends Findable> extends Hit<T> {
  readonly missed: number;
}

const best = <T extends Findable>(hits: readonly Scored<T>[]): Scored<T> =>
  hits.reduce((a, b) => (b.missed < a.missed || (b.missed === a.missed && b.score > a.score) ? b : a));

function hit<T extends Findable>(entry: T, tokens: readonly string[]): Scored<T> {
  const scores = tokens.map((token) => tokenScore(entry, token));
  const spans = (text: string): Span[] => tokens.flatMap((token) => wordsIn(text).flatMap((word) => span(token, word)));
  const inName = [...spans(entry.name), ...tokens.flatMap((token) => within(entry.name, token))];
  return {
    entry,
    // The average, so that two words read as one weigh as much as both.
    score: scores.reduce((sum, score) => sum + score, 0) / tokens.length,
    missed: scores.filter((score) => score === 0).length,
    inName: merged(inName),
    inDescription: merged(spans(entry.description)),
    by: entry.words.filter((word) => tokens.some((token) => likeness(token, word.toLowerCase()) > 0)),
  };
}

function tokenScore(entry: Findable, token: string): number {
  const among = (weight: number, text: string): number => weight * Math.max(0, ...wordsIn(text).map((word) => likeness(token, word.text)));
  return Math.max(
    among(10, entry.id),
    within(entry.name, token).length > 0 ? 5 : 0,
    among(7, entry.words.join(" ")),
    among(4, entry.description),
    among(3, groups[entry.group]),
    among(2, entry.returns),
    ...entry.parameters.map(({ name, description }) => among(2, `${name} ${spaced(name)} ${description}`)),
    // Units and other texts that an argument knows.
    ...entry.parameters.map(({ wants }) => among(1, suggestions(wants).join(" "))),
  );
}

/** How well a word that was asked for fits one that is there, 0 to 1. */
function likeness(token: string, word: string): number {
  if (token === word) return 1;
  if (word.startsWith(token)) return 0.8;
  // "ounces" asks for "ounce" too.
  if (word.length >= 3 && token.startsWith(word) && token.length - word.length <= 2) return 0.7;
  return token.length >= 4 && isNearly(token, word) ? 0.5 : 0;
}

function span(token: string, { text, start, end }: Word): Span[] {
  if (likeness(token, text) === 0) return [];
  return [[start, text.startsWith(token) ? start + token.length : end]];
}

/** Names are words grown together: "bars" stands in COPPERBARS. */
function within(name: string, token: string): Span[] {
  const at = token.length >= 3 ? name.toLowerCase().indexOf(token, name.indexOf(".") + 1) : -1;
  return at >= 0 ? [[at, at + token.length]] : [];
}

function merged(spans: readonly Span[]): readonly Span[] {
  const result: Span[] = [];
  for (const [start, end] of [...spans].sort((a, b) => a[0] - b[0])) {
    const last = result[result.length - 1];
    if (last && start <= last[1]) result[result.length - 1] = [last[0], Math.max(last[1], end)];
    else result.push([start, end]);
  }
  return result;
}

export interface HitGroup<T extends Findable> {
  readonly title: string;
  readonly hits: readonly Hit<T>[];
}

/** By the steps of the work; a step with a better hit comes before one with a lesser, else in the order of the work. */
export function grouped<T extends Findable>(hits: readonly Hit<T>[]): readonly HitGroup<T>[] {
  const order = Object.keys(groups) as Group[];
  return order
    .map((group) => ({ title: groups[group], hits: hits.filter(({ entry }) => entry.group === group) }))
    .filter((group) => group.hits.length > 0)
    .sort((a, b) => (b.hits[0]?.score ?? 0) - (a.hits[0]?.score ?? 0));
}
