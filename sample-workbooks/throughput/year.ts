import { dayNumber } from "../../src/lots/calendar";
import { massUnits } from "../../src/core/measure/mass";

/** A lot of an invented year, as the shop's scale and assays told it. */
export interface YearLot {
  readonly number: string;
  readonly day: number;
  readonly client: string;
  readonly goods: string;
  /** In grams. */
  readonly gross: number;
  readonly tare: number;
  /** In parts per thousand. */
  readonly fineness: number;
  /** In troy ounces. */
  readonly outturn: number;
  readonly price: number;
  readonly payable: number;
}

/** What was counted and shipped in a month, in grams as weighed. */
export interface YearMonth {
  readonly year: number;
  readonly month: number;
  readonly lots: readonly YearLot[];
  readonly crystal: number;
  readonly residues: number;
  readonly soldCrystal: number;
  readonly soldResidues: number;
}

export const YEAR = 2025;
/** In which 8 troy ounces of crystal went missing. */
export const LOSS = { month: 8, ounces: 8 } as const;
/** In which the weigh-in scale showed this share too much. */
export const BIAS = { month: 10, share: 0.004 } as const;
/** Fine silver in the filters, slimes and skulls that are kept. */
export const RESIDUE_FINENESS = 120;
export const CRYSTAL_FINENESS = 999.9;

const OUNCE = massUnits.find("ozt", "unit").size.over(massUnits.find("g", "unit").size).toNumber();
const GOODS = [["Flatware", 925], ["Casting sprues", 925], ["Hollowware, cut up", 921], ["Coin, mixed dates", 899], ["Forks, marked 830", 828], ["Bench filings", 894], ["Trays, marked 800", 797]] as const;
const CLIENTS = ["C-03", "C-07", "C-12", "C-15", "C-18", "C-21"];

/** The same year on every machine (a linear congruential generator, constants of Numerical Recipes). */
function dice(): () => number {
  let state = 20_250_101;
  return () => (state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0) / 2 ** 32;
}

const rounded = (value: number, places: number): number => Number(value.toFixed(places));

export function inventedYear(): YearMonth[] {
  const next = dice();
  const between = (low: number, high: number): number => low + next() * (high - low);
  let [crystal, residues, price] = [40, 12, 24.8];
  return Array.from({ length: 12 }, (_, i): YearMonth => {
    const month = i + 1;
    const count = 9 + Math.floor(next() * 4);
    price = rounded(price * between(0.97, 1.05), 2);
    const lots: YearLot[] = [];
    for (let n = 0; n < count; n++) {
      const [goods, stamp] = GOODS[Math.floor(next() * GOODS.length)] ?? GOODS[0];
      const net = between(1800, 7200);
      const fineness = rounded(stamp + between(-2, 2), 1);
      const trueFine = (net * fineness) / 1000 / OUNCE;
      const shown = month === BIAS.month ? net * (1 + BIAS.share) : net;
      const tare = rounded(between(20, 420), 0);
      const outturn = rounded(trueFine * between(0.986, 0.996), 3);
      lots.push({
        number: `25-${String(month).padStart(2, "0")}-${String(n + 1).padStart(2, "0")}`,
        day: dayNumber({ year: YEAR, month, day: 2 + Math.floor((n * 24) / count) }),
        client: CLIENTS[Math.floor(next() * CLIENTS.length)] ?? "C-03",
        goods,
        gross: rounded(shown + tare, 0),
        tare,
        fineness,
        outturn,
        price,
        payable: 0.95 + Math.floor(next() * 3) / 100,
      });
      crystal += outturn;
      residues += trueFine - outturn + between(-0.05, 0.05);
    }
    const soldCrystal = rounded(((crystal - between(30, 60)) * OUNCE * 1000) / CRYSTAL_FINENESS, 0);
    crystal -= soldCrystal * (CRYSTAL_FINENESS / 1000 / OUNCE);
    const soldResidues = month % 3 === 0 ? rounded(((residues - 4) * OUNCE * 1000) / RESIDUE_FINENESS, 0) : 0;
    residues -= soldResidues * (RESIDUE_FINENESS / 1000 / OUNCE);
    if (month === LOSS.month) crystal -= LOSS.ounces;
    return { year: YEAR, month, lots, crystal: rounded((crystal * OUNCE * 1000) / CRYSTAL_FINENESS, 1), residues: rounded((residues * OUNCE * 1000) / RESIDUE_FINENESS, 0), soldCrystal, soldResidues };
  });
}
