import type { Notation } from "./notation";

interface TypedDate {
  /** The spreadsheet's day number. */
  readonly value: number;
  readonly written: (notation: Notation) => string;
}

const DATE = /^(\d{4})-(\d{1,2})-(\d{1,2})(?:[ T]+(\d{1,2}):(\d{2}))?$/;
const DAY = 86_400_000;
const DAY_ZERO = Date.UTC(1899, 11, 30);

/** A date as 2025-11-25, or with a time as 2025-11-25 08:30. */
export function readDate(text: string): TypedDate | null {
  const match = DATE.exec(text);
  if (!match) return null;
  const [year = 0, month = 0, day = 0, hours = 0, minutes = 0] = match.slice(1).map((part) => Number(part ?? 0));
  const at = Date.UTC(year, month - 1, day);
  const back = new Date(at);
  if (back.getUTCMonth() !== month - 1 || back.getUTCDate() !== day || hours > 23 || minutes > 59) return null;
  return {
    value: (at - DAY_ZERO) / DAY + (hours * 60 + minutes) / 1440,
    written: ({ separator }) => {
      const time = hours || minutes ? `+TIME(${[hours, minutes, 0].join(separator)})` : "";
      return `DATE(${[year, month, day].join(separator)})${time}`;
    },
  };
}
