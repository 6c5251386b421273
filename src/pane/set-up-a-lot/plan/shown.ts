import { dayOf } from "../../../lots/calendar";
import { type Notation, writtenNumber } from "../../notation";

const NARROW_SPACE = "\u202f";

/** To four digits, and what is counted in full; for reading only: nothing is computed on with it, and the working has the rest. */
export function sensible(value: number, notation: Notation): string {
  const rounded = Number.isInteger(value) && Math.abs(value) < 1e6 ? value : Number(value.toPrecision(4));
  const [whole = "", ...decimals] = writtenNumber(rounded, notation).split(notation.decimal);
  const grouped = /^\d{5,}$/.test(whole) ? whole.replace(/\B(?=(\d{3})+$)/g, NARROW_SPACE) : whole;
  return [grouped, ...decimals].join(notation.decimal);
}

/** To three digits, and to five where the last of a whole is what counts. */
export const percent = (share: number, notation: Notation): string => `${writtenNumber(Number((share * 100).toPrecision(share > 0.99 && share < 1 ? 5 : 3)), notation)} %`;

const WEEKDAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const MINUTES = 1440;

/** A spreadsheet's day and time as "Wed 4 Mar 08:00". */
export function dayAndTime(value: number): string {
  const minutes = Math.round(value * MINUTES);
  const [number, minute] = [Math.floor(minutes / MINUTES), minutes % MINUTES];
  const { month, day } = dayOf(number);
  const two = (part: number): string => String(part).padStart(2, "0");
  // Day 1 of the spreadsheet's calendar, from March 1900 on, was a Sunday.
  return `${WEEKDAYS[(number - 1) % 7]} ${day} ${MONTHS[month - 1]} ${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
}
