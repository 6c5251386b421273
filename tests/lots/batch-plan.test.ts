import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { evaluate } from "../../src/engine/evaluate";
import { type BatchPlan, batchPlan } from "../../src/lots/batch-plan";
import type { BatchChoices, PlanLot } from "../../src/lots/batch-plan-cells";
import { needsInWords } from "../../src/lots/batch-plan-needs";
import type { Shop, ShopFieldId } from "../../src/lots/shop";

const lot: PlanLot = { net: { value: 17.5, unit: "lb" }, fineness: 925, lot: "L-104" };
const shop: Shop = {
  acidStrength: { value: "65%" },
  acidExcess: { value: "5%" },
  pail: { value: 5, unit: "gal" },
  pailFill: { value: "75%" },
  fumeHours: { value: 6 },
  airLimit: { value: 0.2 },
  airSafety: { value: 4 },
  copperAllowance: { value: "13%" },
  copperBar: { value: 5, unit: "lb" },
  copperStub: { value: "15%" },
  dropTarget: { value: 0.05 },
  dropRate: { value: 0.15 },
  settleHours: { value: 24 },
  saltExcess: { value: "50%" },
  retained: { value: 2, unit: "L" },
  rinse: { value: 2, unit: "gal" },
  rinseTarget: { value: 0.01 },
  crucible: { value: 6, unit: "kg" },
  mould: { value: 100, unit: "ozt" },
  cellAmps: { value: 50 },
  cellVolts: { value: 2 },
  cellEfficiency: { value: "92%" },
};
const choices: BatchChoices = { water: { value: 20, unit: "L" }, freeAcid: 3, start: 46000.5, barFineness: "99%", takesCopperOut: true };

/** What a refiner would type to have the same figures; a name stands for the cell that holds its formula. */
const sheet: Readonly<Record<string, string>> = {
  acidLeast: '=LOT.NITRIC(17.5,"lb",925,"65%",0,"5%","gal")',
  acidMost: '=LOT.NITRIC(17.5,"lb",925,"65%",1,"5%","gal")',
  volumeLeast: '=acidLeast+LOT.VOLUME(20,"L","gal")',
  volumeMost: '=acidMost+LOT.VOLUME(20,"L","gal")',
  pailsLeast: '=LOT.VESSELS(volumeLeast,"gal",5,"gal","75%")',
  pailsMost: '=LOT.VESSELS(volumeMost,"gal",5,"gal","75%")',
  fumeLeast: '=LOT.FUME(17.5,"lb",925,0)',
  fumeMost: '=LOT.FUME(17.5,"lb",925,1)',
  airLeast: '=LOT.DILUTIONAIR(fumeLeast,6,0.2,4,"cfm")',
  airMost: '=LOT.DILUTIONAIR(fumeMost,6,0.2,4,"cfm")',
  silver: '=LOT.FINEWEIGHT(17.5,"lb",925)',
  loadLeast: '=LOT.SILVERLOAD(silver,"ozt",volumeMost,"gal")',
  loadMost: '=LOT.SILVERLOAD(silver,"ozt",volumeLeast,"gal")',
  copper: '=LOT.COPPER(silver,"ozt","13%",3,"lb")',
  copperBars: '=LOT.COPPERBARS(copper,"lb",5,"lb","15%")',
  dropHoursLeast: "=LOT.DROPHOURS(loadLeast,0.05,0.15)",
  dropHoursMost: "=LOT.DROPHOURS(loadMost,0.05,0.15)",
  salt: '=LOT.SALT(0.05*LOT.VOLUME(volumeMost,"gal","L"),"g","50%")',
  otherCopper: '=17.5-LOT.FINEWEIGHT(17.5,"lb",925,"lb")+LOT.COPPER(silver,"ozt",0,3,"lb")-LOT.COPPER(silver,"ozt",0,0,"lb")',
  spentCopperLeast: '=LOT.SPENTCOPPER(silver,"ozt",otherCopper,"lb",volumeMost,"gal")',
  spentCopperMost: '=LOT.SPENTCOPPER(silver,"ozt",otherCopper,"lb",volumeLeast,"gal")',
  rinses: '=LOT.RINSES(spentCopperMost,0.01,2,LOT.VOLUME(2,"gal","L"))',
  rinseWater: "=rinses*2",
  heats: '=LOT.HEATS(silver,"ozt",6,"kg")',
  cellHours: '=LOT.CELLHOURS(silver,"ozt",50,"92%")',
  cellEnergy: '=LOT.CELLENERGY(silver,"ozt",2,"92%")',
  cellDraw: '=LOT.CELLDRAW(LOT.GROSSWEIGHT(silver,"ozt","99%"),"ozt","99%")',
  spentLiquorLeast: "=volumeLeast",
  spentLiquorMost: "=volumeMost",
  iron: '=LOT.IRON(otherCopper+LOT.COPPER(silver,"ozt",0,0,"lb"),"lb")',
  soda: "=LOT.SODA(3)",
};
const names = Object.keys(sheet);
const cells = Object.fromEntries(Object.values(sheet).map((formula, i) => [`A${i + 1}`, formula.replace(/\b[a-z]\w+\b(?!")/gi, (word) => (names.includes(word) ? `A${names.indexOf(word) + 1}` : word))]));
const inSheet = (name: string): unknown => evaluate(`A${names.indexOf(name) + 1}`, cells);

function plan(of: { readonly lot?: PlanLot; readonly shop?: Shop; readonly choices?: BatchChoices } = {}): BatchPlan {
  const made = batchPlan(of.lot ?? lot, of.shop ?? shop, of.choices ?? choices);
  if (typeof made === "string") throw new Error(made);
  return made;
}
const content = (made: BatchPlan, id: string) => made.lines.find((line) => line.id === id)?.content;
function ends(made: BatchPlan, id: string): { least: number; most: number } {
  const of = content(made, id);
  if (of?.kind !== "ends") throw new Error(`${id} has no figure: ${JSON.stringify(of)}`);
  return of.ends;
}
const lacked = (made: BatchPlan, id: string): unknown => {
  const of = content(made, id);
  return of?.kind === "lacking" ? needsInWords(of.needs) : of;
};

describe("each figure of the plan", () => {
  const made = plan();
  const figures = made.lines.filter((line) => line.content.kind === "ends").map(({ id }) => id);

  it("is tried here", () => {
    expect(figures.sort()).toEqual([...new Set(names.map((name) => name.replace(/(?:Least|Most)$/, "")))].filter((name) => !["volume", "otherCopper"].includes(name)).sort());
  });

  it.each(figures)("is what the formulas in a sheet show: %s", (id) => {
    const { least, most } = ends(made, id);
    const [low, high] = [inSheet(`${id}Least`), inSheet(`${id}Most`)].map((value, i) => (names.includes(`${id}Least`) ? value : i === 0 ? inSheet(id) : inSheet(id)));
    expect(least).toBeCloseTo(low as number, 12);
    expect(most).toBeCloseTo(high as number, 12);
  });

  it("stands in the order of the work", () => {
    expect([...new Set(made.lines.map(({ group }) => group))]).toEqual(["Dissolving", "Drop", "Washing", "Melt and cell", "Waste"]);
  });

  it("has the caution of its function where the work can hurt", () => {
    const cautions = Object.fromEntries(made.lines.map(({ id, caution }) => [id, caution]));
    for (const id of ["acid", "fume", "air", "load", "copper", "dropHours", "salt", "heats", "bars", "cellHours", "spentCopper", "iron", "soda"])
      expect(cautions[id], id).toMatch(/local .*codes and licensed practice/);
    expect(cautions["silver"]).toBeNull();
  });
});

describe("the list of times", () => {
  it("is that of DROPPLAN with the longest hours of the drop", () => {
    const times = content(plan(), "times");
    const shown = evaluate(`=LOT.DROPPLAN(46000.5,${String(inSheet("dropHoursMost"))},24)`);
    expect(times?.kind === "rows" && times.rows.map(({ label, value }) => [label, value])).toEqual(shown);
  });

  it("keeps to the hours that are given for this batch, and then tells what share has dropped", () => {
    const made = plan({ choices: { ...choices, dropHours: 48 } });
    const times = content(made, "times");
    expect(times?.kind === "rows" && times.rows.at(-1)).toEqual({ label: "Decant", value: 46003.5, unit: null });
    expect(ends(made, "dropped").most).toBe(evaluate("=LOT.DROPPED(48,0.15)"));
    expect(ends(made, "salt").most).toBeCloseTo(evaluate(`=LOT.SALT(LOT.FINEWEIGHT(17.5,"lb",925,"g")*(1-LOT.DROPPED(48,0.15)),"g","50%")`) as number, 9);
    expect(content(made, "dropHours")).toBeUndefined();
  });
});

describe("silver bars", () => {
  it("and what is left over are those of BARS", () => {
    const bars = content(plan(), "bars");
    expect(bars?.kind === "rows" && bars.rows.map(({ label, value, unit }) => [label, value, unit])).toEqual(evaluate(`=LOT.BARS(${String(inSheet("silver"))},"ozt",100,"ozt")`));
  });
});

describe("what nobody has told", () => {
  const without = (...fields: readonly ShopFieldId[]): Shop => Object.fromEntries(Object.entries(shop).filter(([field]) => !(fields as readonly string[]).includes(field)));

  it.each<[ShopFieldId, string, string]>([
    ["acidStrength", "acid", "the strength of the acid"],
    ["pail", "pails", "the pail"],
    ["fumeHours", "air", "the hours that the fume takes"],
    ["airLimit", "air", "the limit for the air"],
    ["copperBar", "copperBars", "the copper bar"],
    ["dropTarget", "salt", "the silver at which a drop is done"],
    ["dropRate", "dropHours", "the rate of a drop"],
    ["settleHours", "times", "the hours to settle"],
    ["retained", "rinses", "the liquid that a decanting leaves"],
    ["rinse", "rinses", "the water of a rinse"],
    ["rinseTarget", "rinses", "the copper to rinse down to"],
    ["crucible", "heats", "the crucible"],
    ["mould", "bars", "the mould"],
    ["cellAmps", "cellHours", "the current of the cell"],
    ["cellVolts", "cellEnergy", "the voltage of the cell"],
  ])("of the shop is named where it is needed: %s for %s", (field, id, words) => {
    const made = plan({ shop: without(field) });
    expect(lacked(made, id)).toEqual({ shop: words, batch: null });
    expect(made.needs).toEqual([{ in: "shop", field }]);
  });

  it("is named for all that it feeds, and leaves the others standing", () => {
    const made = plan({ shop: without("acidStrength", "dropRate") });
    expect(lacked(made, "dropHours")).toEqual({ shop: "the strength of the acid and the rate of a drop", batch: null });
    expect(lacked(made, "spentCopper")).toEqual({ shop: "the strength of the acid", batch: null });
    expect(ends(made, "copper")).toEqual(ends(plan(), "copper"));
    expect(made.curve).toBeNull();
    expect(made.pails).toBeNull();
  });

  it("of the batch is asked for beside the figures, and no water is guessed", () => {
    const made = plan({ choices: {} });
    expect(lacked(made, "pails")).toEqual({ shop: null, batch: "the water that is added" });
    expect(lacked(made, "times")).toEqual({ shop: null, batch: "the water that is added and when the drop starts" });
    expect(lacked(made, "cellDraw")).toEqual({ shop: null, batch: "the fineness of the silver bars" });
    expect(content(made, "soda")).toBeUndefined();
    expect(content(made, "iron")).toBeUndefined();
  });

  it("leaves a plan of what can be known from the lot alone", () => {
    const made = plan({ shop: {}, choices: {} });
    expect(made.lines.filter(({ content: { kind } }) => kind === "ends").map(({ id }) => id)).toEqual(["fume", "silver", "copper"]);
  });
});

describe("a shop that thins its liquor to a load", () => {
  const thinning: Shop = { ...shop, dropStart: { value: 60 } };

  it("has that load at the start of the drop, whatever acid was poured", () => {
    const made = plan({ shop: thinning, choices: {} });
    expect(ends(made, "load").least).toBeCloseTo(60, 10);
    expect(ends(made, "load").most).toBeCloseTo(60, 10);
    expect(evaluate(`=LOT.VOLUME(${ends(made, "spentLiquor").most},"gal","L")`)).toBeCloseTo((17.5 * 453.59237 * 0.925) / 60, 9);
  });

  it("is overruled by the water that is given for this batch", () => {
    expect(ends(plan({ shop: thinning }), "load")).toEqual(ends(plan(), "load"));
  });

  it("never takes acid out again", () => {
    const made = plan({ shop: { ...shop, dropStart: { value: 5000 } }, choices: {} });
    expect(ends(made, "spentLiquor")).toEqual(ends(made, "acid"));
  });
});

describe("a value that its function cannot take", () => {
  it("is told in its line, and the others stand", () => {
    const made = plan({ shop: { ...shop, acidStrength: { value: 65 } } });
    expect(content(made, "acid")).toMatchObject({ kind: "fault", sentence: expect.stringContaining("strength = 65") });
    expect(ends(made, "copper")).toEqual(ends(plan(), "copper"));
  });

  it("in the lot itself leaves no plan, but its sentence", () => {
    expect(batchPlan({ ...lot, fineness: 50 }, shop, choices)).toMatch(/^Cannot use fineness = 50/);
  });
});

describe("pails", () => {
  it("as many as are needed stay under their fill", () => {
    const made = plan();
    expect(made.pails?.count).toBe(ends(made, "pails").most);
    expect(made.pails?.most).toBeLessThanOrEqual(0.75);
    expect(made.remarks).toEqual([]);
  });

  it("too few are over it, which is remarked and not forbidden", () => {
    const made = plan({ choices: { ...choices, pails: 2 } });
    expect(made.remarks.map(({ sentence }) => sentence)).toEqual([expect.stringMatching(/^\d+\.\d+ L is over the fill of 2 pails \(28\.3906 L at 75 %\)/)]);
  });
});

describe("for any lot and any batch", () => {
  const units = fc.constantFrom("g", "kg", "lb", "ozt");
  const any = fc.record({
    net: fc.record({ value: fc.integer({ min: 100, max: 50_000 }).map((n) => n / 10), unit: units }),
    fineness: fc.integer({ min: 300, max: 1000 }),
  });
  const batch = fc.record({ water: fc.record({ value: fc.integer({ min: 0, max: 400 }).map((n) => n / 10), unit: fc.constantFrom("L", "gal") }), freeAcid: fc.integer({ min: 0, max: 40 }).map((n) => n / 4) });
  const planned = (test: (made: BatchPlan, of: { lot: PlanLot; choices: BatchChoices }) => void): void =>
    fc.assert(fc.property(any, batch, (one, two) => {
      const of = { lot: { ...one, lot: "any" }, choices: { ...choices, ...two } };
      test(plan(of), of);
    }), { numRuns: 40 });

  it("each figure is that of the formula shown with its working, and the lesser end comes first", () => {
    planned((made) => {
      for (const { content: of, id } of made.lines) {
        if (of.kind !== "ends") continue;
        expect(of.workings.map(({ formula }) => evaluate(formula)), id).toEqual(of.workings.length === 1 ? [of.ends.most] : [of.ends.least, of.ends.most]);
        expect(of.ends.least, id).toBeLessThanOrEqual(of.ends.most);
      }
    });
  });

  it("copper in the spent liquor is that of the charge, that for the silver and that for the acid", () => {
    planned((made, { lot: { net, fineness }, choices: { freeAcid = 0 } }) => {
      const grams = evaluate(`=LOT.WEIGHT(${net.value},"${net.unit}","g")`) as number;
      const litres = evaluate(`=LOT.VOLUME(${ends(made, "spentLiquor").most},"gal","L")`) as number;
      const silver = (grams * Number(fineness)) / 1000;
      const expected = grams - silver + (silver * 63.546) / (2 * 107.8682) + (freeAcid * 3 * 63.546) / 8;
      expect((ends(made, "spentCopper").least * litres) / expected).toBeCloseTo(1, 9);
      expect((evaluate(`=LOT.WEIGHT(${ends(made, "iron").most},"${net.unit}","g")`) as number) / ((expected * 55.845) / 63.546)).toBeCloseTo(1, 5);
    });
  });

  it("silver is conserved: in the liquor, and in the bars with what is left over", () => {
    planned((made) => {
      const silver = ends(made, "silver").most;
      const litres = evaluate(`=LOT.VOLUME(${ends(made, "spentLiquor").least},"gal","L")`) as number;
      expect((ends(made, "load").most * litres) / (silver * 31.1034768)).toBeCloseTo(1, 10);
      const bars = content(made, "bars");
      const [count, rest] = bars?.kind === "rows" ? bars.rows.map(({ value }) => value) : [];
      expect((count ?? NaN) * 100 + (rest ?? NaN)).toBeCloseTo(silver, 8);
    });
  });

  it("a share by the strong route lies between both ends", () => {
    planned((made, of) => {
      const share = plan({ ...of, choices: { ...of.choices, strongShare: "40%" } });
      for (const id of ["acid", "fume", "load"]) {
        expect(ends(share, id).most, id).toBeGreaterThanOrEqual(ends(made, id).least);
        expect(ends(share, id).most, id).toBeLessThanOrEqual(ends(made, id).most);
        expect(ends(share, id).least, id).toBe(ends(share, id).most);
      }
    });
  });

  it("the curve falls from the load at the start to the target at the test", () => {
    planned((made) => {
      if (ends(made, "load").most <= 0.05) return expect(made.curve).toBeNull();
      const { points = [], test } = made.curve ?? {};
      expect(points[0]?.left).toBe(ends(made, "load").most);
      expect(points.at(-1)?.left).toBeCloseTo(0.05, 8);
      expect(points.at(-1)?.hours).toBe(test);
      expect(points.every(({ left }, i) => i === 0 || left <= (points[i - 1]?.left ?? 0))).toBe(true);
    });
  });
});
