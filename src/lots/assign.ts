import { type Content, fitOf } from "./content";
import { type Field, fields } from "./fields";
import type { ColumnMatch, Doubt, ListColumn } from "./list";
import { unitOf } from "./column-unit";
import { type Heading, type Measure, coverage, readHeading } from "./words";

export interface Candidate {
  readonly column: ListColumn;
  readonly heading: Heading;
  readonly content: Content;
}

/** A column takes a field only from here on; below, the words say too little. */
const ENOUGH = 0.36;
const HINT = 0.6;
/** A hint whose measure agrees says more: "Fine (ozt)" is a weight. */
const MEASURED_HINT = 0.75;

/** How well a heading says a field, 0 to 1. Its measure can forbid it: nothing in kilograms is a payout. */
export function saying(field: Field, heading: Heading): number {
  const allowed = measureFits(field, heading.measure);
  if (allowed === 0) return 0;
  const { words } = heading;
  const best = (phrases: readonly string[]): number => phrases.reduce((most, phrase) => Math.max(most, coverage(words, phrase)), 0);
  const bare = words.length === 0 && heading.measure?.kind === "mass" && field.id === "net" ? 0.7 : 0;
  const hint = heading.measure !== null && allowed === 1 ? MEASURED_HINT : HINT;
  return allowed * Math.max(best(field.says), hint * best(field.hints), HINT * bare);
}

/** 1 where heading and field are of one measure, a little less where the heading says none, 0 where they exclude each other. */
function measureFits({ kind, id }: Field, measure: Measure | null): number {
  if (measure === null) return 0.95;
  switch (kind) {
    case "mass":
      return measure.kind === "mass" || measure.kind === "by unit column" ? 1 : 0;
    case "volume":
      return measure.kind === "volume" ? 1 : 0;
    case "per mass":
      return measure.kind === "per mass" ? 1 : measure.kind === "money" || (measure.kind === "mass" && id === "price") ? 0.8 : 0;
    case "money":
      return measure.kind === "money" ? 1 : 0;
    case "fineness":
      return measure.kind === "percent" || measure.kind === "per thousand" || measure.kind === "karat" ? 1 : 0;
    case "share":
      return measure.kind === "percent" ? 1 : 0;
    case "per thousand":
      return measure.kind === "per thousand" || measure.kind === "percent" ? 1 : 0;
    case "unit":
      return measure.kind === "by unit column" ? 0.9 : 0;
    case "count":
      return 0;
    default:
      return 0;
  }
}

interface Pairing {
  readonly field: Field;
  readonly candidate: Candidate;
  readonly said: number;
  readonly score: number;
}

/** Each field with the column that fits it best, each column once. */
export function assign(candidates: readonly Candidate[]): readonly ColumnMatch[] {
  const pairings = candidates.flatMap((candidate) =>
    fields.map((field): Pairing => {
      const said = Math.max(saying(field, candidate.heading), held(field, candidate));
      const { fit } = fitOf(field.kind, candidate.content, candidate.heading.measure);
      return { field, candidate, said, score: said * (fit >= 0 ? 0.8 + 0.2 * fit : 0.8 + 0.65 * fit) };
    }),
  );
  const ranked = pairings
    .filter(({ score }) => score >= ENOUGH)
    .sort((a, b) => b.score - a.score || a.candidate.column.number - b.candidate.column.number);
  const taken = new Map<Field, Pairing>();
  const used = new Set<Candidate>();
  for (const pairing of ranked) {
    if (taken.has(pairing.field) || used.has(pairing.candidate)) continue;
    taken.set(pairing.field, pairing);
    used.add(pairing.candidate);
  }
  const unitColumn = [...taken.values()].some(({ field }) => field.id === "unit");
  return fields.flatMap((field) => {
    const pairing = taken.get(field);
    return pairing ? [matched(pairing, pairings, used, unitColumn)] : [];
  });
}

/** A heading that says nothing known, over cells that can be little else. */
function held({ id, kind }: Field, { heading, content, column }: Candidate): number {
  const isKnown = fields.some((field) => saying(field, heading) > 0.5);
  if (isKnown || content.filled < 2) return 0;
  const { fit } = fitOf(kind, content, heading.measure);
  if (id === "date" || id === "unit") return fit === 1 ? 0.45 : 0;
  return id === "lot" && fit === 1 && column.number <= 3 ? 0.4 : 0;
}

function matched({ field, candidate, said, score }: Pairing, pairings: readonly Pairing[], used: ReadonlySet<Candidate>, unitColumn: boolean): ColumnMatch {
  const { heading, content, column } = candidate;
  const fit = fitOf(field.kind, content, heading.measure);
  const { unit, doubt: unitDoubt } = unitOf(field, heading.measure, content, unitColumn);
  const byWords = saying(field, heading) >= said;
  const rival = pairings
    .filter((other) => other.field === field && other.candidate !== candidate && !used.has(other.candidate))
    .sort((a, b) => b.score - a.score)[0];
  const doubts: (Doubt | null)[] = [
    unitDoubt,
    fit.asks === undefined ? null : { degree: 0.5, sentence: fit.asks },
    fit.fit < 0 ? { degree: 0.7, sentence: `Its ${fit.says}` } : null,
    byWords ? null : { degree: 0.6, sentence: `The heading ${shown(heading)} says nothing that is known: only its cells speak for it` },
    byWords && said < 0.6 ? { degree: 0.4, sentence: `The heading ${shown(heading)} may mean something else` } : null,
    rival && rival.score > 0.8 * score ? { degree: 0.5, sentence: `Column ${rival.candidate.column.letter} ${shown(rival.candidate.heading)} could be it too` } : null,
    column.isHidden ? { degree: 0.2, sentence: `Column ${column.letter} is hidden` } : null,
  ];
  return { field: field.id, column, unit, reason: reason(field, heading, byWords, fit.says), doubt: together(doubts) };
}

const shown = ({ text }: Heading): string => (text === "" ? "(no heading)" : `‘${text}’`);

function reason(field: Field, heading: Heading, byWords: boolean, cells: string): string {
  const { measure } = heading;
  const unit = !measure ? "" : measure.unit !== null && measure.kind !== "per mass" ? ` and the unit ${measure.unit}` : ` and ${measure.written}`;
  return byWords ? `heading ${shown(heading)} says ${field.title.toLowerCase()}${unit}; ${cells}` : `${cells}; the heading ${shown(heading)} does not speak against it`;
}

function together(doubts: readonly (Doubt | null)[]): Doubt | null {
  const real = doubts.filter((doubt) => doubt !== null);
  if (real.length === 0) return null;
  return { degree: Math.max(...real.map(({ degree }) => degree)), sentence: real.map(({ sentence }) => sentence).join(". ") };
}

const memo = new Map<string, number>();

/** How well a text alone could be the heading of any field: for finding rows of headings quickly. */
export function isHeadingText(text: string): number {
  const known = memo.get(text);
  if (known !== undefined) return known;
  const heading = text.length > 60 ? null : readHeading(text);
  const best = heading === null ? 0 : fields.reduce((most, field) => Math.max(most, saying(field, heading)), 0);
  if (memo.size > 20_000) memo.clear();
  memo.set(text, best);
  return best;
}
