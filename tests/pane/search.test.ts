import { describe, expect, it } from "vitest";
import { catalogue } from "../../src/catalogue/catalogue";
import { grouped, search } from "../../src/pane/all-functions/search";
import { isNearly } from "../../src/pane/all-functions/words";

const found = (query: string): string[] => search(catalogue, query).map(({ entry }) => entry.id);

describe("the search", () => {
  it("finds what a refiner asks for in words of the trade", () => {
    expect(found("how much copper")[0]).toBe("COPPER");
    expect(found("penny weight")).toContain("WEIGHT");
    expect(found("sterling")).toEqual(expect.arrayContaining(["STANDARD", "FINENESS", "FINEWEIGHT"]));
    expect(found("loss")).toEqual(expect.arrayContaining(["RECOVERY", "UNACCOUNTED"]));
    expect(found("payout")[0]).toBe("PAYOUT");
  });
  it("takes two words that belong together for one", () => {
    const [entry] = search(catalogue, "penny weight").filter(({ entry }) => entry.id === "WEIGHT");
    expect(entry?.by).toContain("pennyweight");
  });
  it("forgives one wrong, missing, surplus or swapped letter", () => {
    for (const query of ["settlment", "settlementt", "settlemant", "settelment"]) expect(found(query)[0], query).toBe("SETTLEMENT");
  });
  it("does not take short words for one another", () => {
    expect(found("lb")).not.toContain("LOTCOST");
    expect(isNearly("bar", "car")).toBe(true);
    expect(search([entry("SAMPLE", ["bar"])], "car")).toEqual([]);
  });
  it("finds a function by an argument, as it is written or in words, and by a unit that an argument knows", () => {
    expect(found("freeAcid")[0]).toBe("COPPER");
    expect(found("free acid")[0]).toBe("COPPER");
    expect(found("galimp")).toEqual(expect.arrayContaining(["VOLUME", "VESSELS"]));
    expect(found("galimp")).not.toContain("RECOVERY");
  });
  it("finds a function by its name as it stands in a cell, in any case", () => {
    expect(found("lot.copperbars")[0]).toBe("COPPERBARS");
    expect(found("CopperB")[0]).toBe("COPPERBARS");
  });
  it("finds a word in the middle of a name", () => {
    expect(found("bars")).toEqual(expect.arrayContaining(["BARS", "COPPERBARS"]));
  });
  it("shows every function, in the order of the work, before anything is asked", () => {
    expect(found("")).toEqual(catalogue.map(({ id }) => id));
    expect(found("  ?! ")).toEqual(catalogue.map(({ id }) => id));
  });
  it("finds nothing for a word that no function knows", () => {
    expect(found("xyzzy")).toEqual([]);
  });
  it("lets a function lack one word of three", () => {
    expect(found("troy ounces fine")).toContain("FINEWEIGHT");
    expect(found("copper bars hang")[0]).toBe("COPPERBARS");
  });
  it("falls back to some of the words where none has all of them", () => {
    expect(found("copper xyzzy")[0]).toBe("COPPER");
  });
  it("keeps words that say nothing where nothing else is asked", () => {
    expect(search([entry("FIRST", []), entry("SECOND", ["many"])], "how many").map((hit) => hit.entry.id)).toEqual(["SECOND"]);
  });
  it("marks what it hit in name and description", () => {
    const [hit] = search(catalogue, "coper");
    expect(hit?.entry.name.slice(...(hit.inName[0] ?? []))).toBe("COPPER");
    expect(hit?.entry.description.slice(...(hit.inDescription[0] ?? []))).toBe("Copper");
  });
  it("groups by the steps of the work, the step of the best hit first", () => {
    expect(grouped(search(catalogue, "")).map(({ title }) => title).slice(0, 2)).toEqual(["Weights and fineness", "Samples and assays"]);
    const groups = grouped(search(catalogue, "copper"));
    expect(groups[0]?.title).toBe("Dropping with copper");
    expect(groups[0]?.hits[0]?.entry.id).toBe("COPPER");
  });
});

function entry(id: string, words: readonly string[]) {
  const blank = { description: "", parameters: [], returns: "", spills: false, examples: [], group: "weights", caution: null, source: null } as const;
  return { ...blank, id, name: `LOT.${id}`, words };
}
