// Written by src/catalogue/generate.ts from the comments in src/functions: change those instead.
import type { Texts } from "./entry";

export const texts: readonly Texts[] = [
  {
    "id": "WEIGHT",
    "name": "LOT.WEIGHT",
    "description": "A weight in another unit.",
    "parameters": [
      {
        "name": "value",
        "description": "The weight.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "from",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give it in.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "The weight in the other unit.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.WEIGHT(1,\"lb\",\"ozt\")",
        "shows": "14.58333…"
      },
      {
        "formula": "=LOT.WEIGHT(7000,\"gr\",\"lb\")",
        "shows": "1"
      },
      {
        "formula": "=LOT.WEIGHT(5,\"oz\",\"g\")",
        "shows": "#VALUE! Cannot use from = \"oz\": an ounce can be troy or avoirdupois, and they differ by 9.7 %: write \"ozt\" (troy, 31.1034768 g) or \"ozav\" (avoirdupois, 28.349523125 g)"
      }
    ],
    "group": "weights",
    "words": [
      "convert",
      "pounds",
      "grams",
      "troy",
      "avoirdupois",
      "ounces",
      "pennyweight",
      "grains",
      "kilogram"
    ],
    "caution": null,
    "source": "1 lb = 453.59237 g and 1 ozt = 31.1034768 g, both exact: NIST Special Publication 811, appendix B.8"
  },
  {
    "id": "VOLUME",
    "name": "LOT.VOLUME",
    "description": "A volume in another unit. A bare gallon is the US liquid gallon.",
    "parameters": [
      {
        "name": "value",
        "description": "The volume.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "from",
        "description": "Its unit.",
        "wants": "one of L, mL, gal, galimp, ft3, m3",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give it in.",
        "wants": "one of L, mL, gal, galimp, ft3, m3",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "The volume in the other unit.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.VOLUME(5,\"gal\",\"L\")",
        "shows": "18.92705892"
      },
      {
        "formula": "=LOT.VOLUME(1,\"ft3\",\"L\")",
        "shows": "28.316846592"
      }
    ],
    "group": "weights",
    "words": [
      "convert",
      "litres",
      "liters",
      "gallons",
      "pail",
      "millilitre",
      "cubic",
      "feet"
    ],
    "caution": null,
    "source": "NIST Special Publication 811, appendix B.8"
  },
  {
    "id": "FINENESS",
    "name": "LOT.FINENESS",
    "description": "A fineness on another scale.",
    "parameters": [
      {
        "name": "value",
        "description": "The fineness as it is written.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The scale to give it on.",
        "wants": "one of ppt, %, fraction, karat",
        "otherwise": "ppt",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The fineness.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.FINENESS(\"22k\")",
        "shows": "916.66666…"
      },
      {
        "formula": "=LOT.FINENESS(\"sterling\",\"%\")",
        "shows": "92.5"
      },
      {
        "formula": "=LOT.FINENESS(0.75,\"karat\")",
        "shows": "18"
      },
      {
        "formula": "=LOT.FINENESS(92.5)",
        "shows": "#VALUE! Cannot use value = 92.5: could be %, karat or ‰: write \"92.5%\" or 925"
      }
    ],
    "group": "weights",
    "words": [
      "karat",
      "carat",
      "percent",
      "purity",
      "stamp",
      "mark",
      "sterling",
      "millesimal"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "STANDARD",
    "name": "LOT.STANDARD",
    "description": "The fineness of a named standard.",
    "parameters": [
      {
        "name": "name",
        "description": "The name of the standard.",
        "wants": "the name of a standard: sterling, coin, Britannia, fine silver, silver 800, silver 830, gold 375, gold 417, gold 585, gold 750, gold 916, gold 990, gold 999, platinum 850, platinum 900, platinum 950, platinum 999, palladium 500, palladium 950, palladium 999",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "The fineness, in parts per thousand.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.STANDARD(\"sterling\")",
        "shows": "925"
      },
      {
        "formula": "=LOT.STANDARD(\"coin\")",
        "shows": "900"
      }
    ],
    "group": "weights",
    "words": [
      "sterling",
      "coin",
      "Britannia",
      "hallmark",
      "stamp",
      "mark",
      "legal",
      "gold",
      "platinum",
      "palladium"
    ],
    "caution": null,
    "source": "Hallmarking Convention (legal standards); 16 CFR 23.5(b) (sterling, coin); ISO 9202 series as commonly quoted (830, 417)"
  },
  {
    "id": "FINEWEIGHT",
    "name": "LOT.FINEWEIGHT",
    "description": "Fine weight: net weight times fineness.",
    "parameters": [
      {
        "name": "weight",
        "description": "The net weight.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "fineness",
        "description": "The fineness.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give the fine weight in.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": "ozt",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The fine weight.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.FINEWEIGHT(7500,\"g\",925)",
        "shows": "223.04580…"
      },
      {
        "formula": "=LOT.FINEWEIGHT(100,\"ozt\",\"sterling\")",
        "shows": "92.5"
      },
      {
        "formula": "=LOT.FINEWEIGHT(100,\"ozt\",92.5)",
        "shows": "#VALUE! Cannot use fineness = 92.5: could be %, karat or ‰: write \"92.5%\" or 925"
      }
    ],
    "group": "weights",
    "words": [
      "pure",
      "silver",
      "content",
      "contained",
      "metal",
      "sterling",
      "fine",
      "ounces",
      "assay"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "GROSSWEIGHT",
    "name": "LOT.GROSSWEIGHT",
    "description": "Net weight that holds a given fine weight.",
    "parameters": [
      {
        "name": "fine",
        "description": "The fine weight.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "fineness",
        "description": "The fineness of the alloy.",
        "wants": "a fraction above 0 up to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give the net weight in.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": "unit",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The net weight.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.GROSSWEIGHT(92.5,\"ozt\",925)",
        "shows": "100"
      }
    ],
    "group": "weights",
    "words": [
      "alloy",
      "weight",
      "from",
      "fine",
      "bars",
      "needed"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "MELTFINENESS",
    "name": "LOT.MELTFINENESS",
    "description": "Fineness of a melt of several parts, from their weights in one unit and their finenesses.",
    "parameters": [
      {
        "name": "weights",
        "description": "The weights of the parts, all in one unit.",
        "wants": "a range, each cell a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "finenesses",
        "description": "Their finenesses, in a range of the same shape.",
        "wants": "a range, each cell a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      }
    ],
    "returns": "The fineness, in parts per thousand.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.MELTFINENESS({8;20;10},{\"22k\";\"21k\";\"18k\"})",
        "shows": "850.87719…"
      }
    ],
    "group": "weights",
    "words": [
      "average",
      "mix",
      "blend",
      "alligation",
      "pooled",
      "mean",
      "melt",
      "together"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "ALLOYADD",
    "name": "LOT.ALLOYADD",
    "description": "Weight of metal to add so that a melt comes to a target fineness.",
    "parameters": [
      {
        "name": "weight",
        "description": "The weight of the melt.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "fineness",
        "description": "Its fineness.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "target",
        "description": "The fineness it should have.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "added",
        "description": "The fineness of what is added.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The weight to add, in the unit given.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.ALLOYADD(6,\"ozt\",\"24k\",\"16k\")",
        "shows": "3"
      },
      {
        "formula": "=LOT.ALLOYADD(450,\"g\",0.9,0.925,1)",
        "shows": "150"
      }
    ],
    "group": "weights",
    "words": [
      "dilute",
      "upgrade",
      "copper",
      "add",
      "alligation",
      "lower",
      "raise",
      "karat"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "INQUART",
    "name": "LOT.INQUART",
    "description": "Silver or copper to add to gold-bearing metal so that acid can part it, and the nitric acid that parting then takes, what is added being silver.",
    "parameters": [
      {
        "name": "weight",
        "description": "The weight of the gold-bearing metal.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "fineness",
        "description": "Its gold fineness.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "target",
        "description": "The gold fineness at which parting acid reaches all of the base.",
        "wants": "a fraction above 0 up to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": "250",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "strength",
        "description": "The strength of the acid, by mass.",
        "wants": "a strength by mass from 5% to 70%, as 0.68 or \"68%\"",
        "otherwise": "68%",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "Three lines: the weight to add in the unit given, and the acid in litres at least (gas all NO) and at most (gas all NO2).",
    "spills": true,
    "examples": [
      {
        "formula": "=LOT.INQUART(100,\"g\",\"18k\")",
        "shows": "200"
      }
    ],
    "group": "weights",
    "words": [
      "gold",
      "parting",
      "quartation",
      "karat",
      "scrap",
      "part",
      "silver",
      "nitric",
      "acid"
    ],
    "caution": "Parting uses hot nitric acid and gives off toxic brown fume: the figure plans a purchase and is no procedure; local codes and licensed practice decide.",
    "source": "silver and copper in nitric acid by the dilute and the strong route; what was in the metal beside gold is taken as copper"
  },
  {
    "id": "FINEU",
    "name": "LOT.FINEU",
    "description": "Expanded uncertainty of a fine weight, from the standard uncertainties of weight and fineness, taken as independent.",
    "parameters": [
      {
        "name": "weight",
        "description": "The net weight.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "uWeight",
        "description": "Its standard uncertainty, in the same unit.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "The unit of both.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "fineness",
        "description": "The fineness.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "uFineness",
        "description": "Its standard uncertainty, on the scale in which the fineness is written.",
        "wants": "a number from 0 up on the scale of the fineness, or a text with its own such as \"0.5‰\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "k",
        "description": "The coverage factor.",
        "wants": "a coverage factor, above 0 up to 10",
        "otherwise": "2",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give the uncertainty in.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": "ozt",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The expanded uncertainty of the fine weight.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.FINEU(1000,0,\"ozt\",925,1)",
        "shows": "2"
      }
    ],
    "group": "weights",
    "words": [
      "error",
      "tolerance",
      "plus",
      "minus",
      "accuracy",
      "scale",
      "assay",
      "coverage"
    ],
    "caution": null,
    "source": "JCGM 100:2008 (GUM), 5.1.2 and 6.2.1"
  },
  {
    "id": "AGREEDASSAY",
    "name": "LOT.AGREEDASSAY",
    "description": "Agreed fineness from an exchange of assays, with an umpire where the two differ by more than the splitting limit.",
    "parameters": [
      {
        "name": "ours",
        "description": "Our assay.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "theirs",
        "description": "The client's assay.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "limit",
        "description": "The splitting limit: the difference up to which the mean is taken.",
        "wants": "a number from 0 up on the scale of the fineness, or a text with its own such as \"0.5‰\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "umpire",
        "description": "The umpire's assay.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": "none",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The agreed fineness, in parts per thousand.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.AGREEDASSAY(925,923,3)",
        "shows": "924"
      },
      {
        "formula": "=LOT.AGREEDASSAY(925,915,3,918)",
        "shows": "918"
      },
      {
        "formula": "=LOT.AGREEDASSAY(925,915,3)",
        "shows": "#N/A Cannot compute yet: umpire is still to come: the assays differ by more than the splitting limit, so the lot needs an umpire assay"
      }
    ],
    "group": "assay",
    "words": [
      "exchange",
      "splitting",
      "umpire",
      "settle",
      "dispute",
      "assay",
      "mean",
      "party"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "ASSAYFINE",
    "name": "LOT.ASSAYFINE",
    "description": "Fineness from a parting assay or a titration, corrected by a proof of known metal that went through the same work.",
    "parameters": [
      {
        "name": "sample",
        "description": "The weight of the sample.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "found",
        "description": "The metal found in it: the parted bead or the result of the titration, in the same unit.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "proofTaken",
        "description": "The metal in the proof.",
        "wants": "a number above 0",
        "otherwise": "none",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "proofFound",
        "description": "The metal found in the proof, in the same unit.",
        "wants": "a number above 0",
        "otherwise": "none",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The fineness, in parts per thousand.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.ASSAYFINE(1.1,1.017)",
        "shows": "924.54545…"
      },
      {
        "formula": "=LOT.ASSAYFINE(0.5,0.4575,0.5,0.495)",
        "shows": "924.24242…"
      }
    ],
    "group": "assay",
    "words": [
      "cupel",
      "cupellation",
      "bead",
      "parting",
      "titration",
      "proof",
      "correction",
      "loss"
    ],
    "caution": "Assay by fire and acid burns and gives off lead and acid fume; local codes and licensed practice decide.",
    "source": null
  },
  {
    "id": "SAMPLEU",
    "name": "LOT.SAMPLEU",
    "description": "Expanded uncertainty of the mean fineness of several samples of one melt.",
    "parameters": [
      {
        "name": "finenesses",
        "description": "The finenesses of the samples.",
        "wants": "a range, each cell a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "k",
        "description": "The coverage factor.",
        "wants": "a coverage factor, above 0 up to 10",
        "otherwise": "2",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The expanded uncertainty of their mean, in parts per thousand.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.SAMPLEU({924;925;926},1)",
        "shows": "0.577350…"
      }
    ],
    "group": "assay",
    "words": [
      "dip",
      "samples",
      "standard",
      "deviation",
      "mean",
      "scatter",
      "melt",
      "error"
    ],
    "caution": null,
    "source": "JCGM 100:2008 (GUM), 4.2.3 and 6.2.1"
  },
  {
    "id": "ACIDMOLARITY",
    "name": "LOT.ACIDMOLARITY",
    "description": "Molarity of nitric acid of a given strength, at 20 °C.",
    "parameters": [
      {
        "name": "strength",
        "description": "The strength by mass.",
        "wants": "a strength by mass from 5% to 70%, as 0.68 or \"68%\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "The molarity, in mol/L.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.ACIDMOLARITY(\"40%\")",
        "shows": "7.91341…"
      }
    ],
    "group": "dissolve",
    "words": [
      "nitric",
      "acid",
      "concentration",
      "strength",
      "mol",
      "per",
      "litre",
      "density"
    ],
    "caution": "Nitric acid burns and gives off toxic fume; local codes and licensed practice decide.",
    "source": "density at 20 °C: CRC Handbook of Chemistry and Physics, 102nd ed. (to 40 %), Perry's Chemical Engineers' Handbook (above; in part from memory)"
  },
  {
    "id": "NITRIC",
    "name": "LOT.NITRIC",
    "description": "Volume of nitric acid that dissolves a charge; what is not silver is taken as copper. A real batch lies between a no2share of 0 and of 1.",
    "parameters": [
      {
        "name": "weight",
        "description": "The net weight of the charge.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "fineness",
        "description": "Its silver fineness.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "strength",
        "description": "The strength of the acid, by mass.",
        "wants": "a strength by mass from 5% to 70%, as 0.68 or \"68%\"",
        "otherwise": "68%",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "no2share",
        "description": "The share of the metal that dissolves by the strong route, whose gas is NO2: 0 takes the least acid, 1 the most.",
        "wants": "a share from 0 to 1, or a text such as \"98%\"",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "excess",
        "description": "Acid beyond what the metal takes, as a share.",
        "wants": "a share from 0 to 10, or a text such as \"98%\"",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit of volume to give it in.",
        "wants": "one of L, mL, gal, galimp, ft3, m3",
        "otherwise": "L",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The volume of acid.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.NITRIC(1,\"kg\",\"sterling\")",
        "shows": "0.961807…"
      }
    ],
    "group": "dissolve",
    "words": [
      "how",
      "much",
      "acid",
      "dissolve",
      "sterling",
      "buy",
      "litres",
      "gallons"
    ],
    "caution": "Nitric acid burns and gives off toxic nitrogen oxides. The figure plans a purchase and is no procedure; local fire, air, water and waste codes and licensed practice decide.",
    "source": "3 Ag + 4 HNO₃ → 3 AgNO₃ + NO + 2 H₂O and Ag + 2 HNO₃ → AgNO₃ + NO₂ + H₂O; 3 Cu + 8 HNO₃ → 3 Cu(NO₃)₂ + 2 NO + 4 H₂O and Cu + 4 HNO₃ → Cu(NO₃)₂ + 2 NO₂ + 2 H₂O"
  },
  {
    "id": "FUME",
    "name": "LOT.FUME",
    "description": "Nitrogen oxides that dissolving gives off. NO turns to NO2 in air, so all of it counts as NO2.",
    "parameters": [
      {
        "name": "weight",
        "description": "The net weight of the charge.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "fineness",
        "description": "Its silver fineness.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "no2share",
        "description": "The share of the metal that dissolves by the strong route, whose gas is NO2.",
        "wants": "a share from 0 to 1, or a text such as \"98%\"",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The gas, in mol.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.FUME(1,\"kg\",\"sterling\")",
        "shows": "3.64525…"
      }
    ],
    "group": "dissolve",
    "words": [
      "gas",
      "nitrogen",
      "dioxide",
      "brown",
      "fumes",
      "NOx",
      "ventilation",
      "hood"
    ],
    "caution": "Nitrogen dioxide injures the lungs hours after it was breathed. Fume is drawn off where it rises and treated; local air codes and licensed practice decide.",
    "source": "3 Ag + 4 HNO₃ → 3 AgNO₃ + NO + 2 H₂O and Ag + 2 HNO₃ → AgNO₃ + NO₂ + H₂O; 3 Cu + 8 HNO₃ → 3 Cu(NO₃)₂ + 2 NO + 4 H₂O and Cu + 4 HNO₃ → Cu(NO₃)₂ + 2 NO₂ + 2 H₂O"
  },
  {
    "id": "DILUTIONAIR",
    "name": "LOT.DILUTIONAIR",
    "description": "Air flow that would keep the average of a room under a limit. It can show that a room is not enough, never that it is.",
    "parameters": [
      {
        "name": "gas",
        "description": "The gas given off, in mol.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "hours",
        "description": "The hours over which it is given off.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "limit",
        "description": "The limit, in ppm by volume.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "safety",
        "description": "The factor for air that does not mix evenly.",
        "wants": "a number from 1 up",
        "otherwise": "1",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit of flow to give it in.",
        "wants": "one of cfm, m3/h, L/min, L/s",
        "otherwise": "cfm",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The air flow.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.DILUTIONAIR(1,1,1,1,\"m3/h\")",
        "shows": "24450"
      }
    ],
    "group": "dissolve",
    "words": [
      "ventilation",
      "cfm",
      "fan",
      "fume",
      "hood",
      "exposure",
      "limit",
      "ppm"
    ],
    "caution": "An average over a room never says that the air is fit to breathe: fume is drawn off where it rises; local codes and licensed practice decide.",
    "source": "Q = G·10⁶·K ÷ limit, dilution ventilation; 24.45 L/mol at 25 °C and 1 atm"
  },
  {
    "id": "SILVERLOAD",
    "name": "LOT.SILVERLOAD",
    "description": "Silver in a liquor, in grams per litre.",
    "parameters": [
      {
        "name": "fine",
        "description": "The fine silver in it.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "volume",
        "description": "The volume of the liquor.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "volumeUnit",
        "description": "Its unit.",
        "wants": "one of L, mL, gal, galimp, ft3, m3",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "The load, in g/L.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.SILVERLOAD(1,\"kg\",10,\"L\")",
        "shows": "100"
      }
    ],
    "group": "dissolve",
    "words": [
      "concentration",
      "pail",
      "grams",
      "per",
      "litre",
      "solution",
      "silver",
      "nitrate"
    ],
    "caution": "Silver nitrate burns skin and eyes and stains; local codes and licensed practice decide.",
    "source": null
  },
  {
    "id": "VESSELS",
    "name": "LOT.VESSELS",
    "description": "Whole vessels that a volume needs at their fill.",
    "parameters": [
      {
        "name": "volume",
        "description": "The volume.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of L, mL, gal, galimp, ft3, m3",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "vessel",
        "description": "The volume of one vessel to the brim.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "vesselUnit",
        "description": "Its unit.",
        "wants": "one of L, mL, gal, galimp, ft3, m3",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "fill",
        "description": "The share to which a vessel is filled.",
        "wants": "a share above 0 to 1, or a text such as \"98%\"",
        "otherwise": "80%",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The number of vessels.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.VESSELS(40,\"L\",5,\"gal\")",
        "shows": "3"
      }
    ],
    "group": "dissolve",
    "words": [
      "pails",
      "buckets",
      "tanks",
      "how",
      "many",
      "fill",
      "count"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "COPPER",
    "name": "LOT.COPPER",
    "description": "Copper that a drop consumes: for the silver, with an allowance, and for the free acid.",
    "parameters": [
      {
        "name": "fine",
        "description": "The fine silver in solution.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "allowance",
        "description": "Copper beyond what the reaction takes, as a share.",
        "wants": "a share from 0 to 10, or a text such as \"98%\"",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "freeAcid",
        "description": "Free nitric acid in the liquor, in mol.",
        "wants": "a number from 0 up",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give the copper in.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": "unit",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The copper.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.COPPER(10,\"lb\")",
        "shows": "2.94553…"
      },
      {
        "formula": "=LOT.COPPER(3,\"lb\",\"13%\")",
        "shows": "0.998537…"
      },
      {
        "formula": "=LOT.COPPER(10,\"oz\")",
        "shows": "#VALUE! Cannot use unit = \"oz\": an ounce can be troy or avoirdupois, and they differ by 9.7 %: write \"ozt\" (troy, 31.1034768 g) or \"ozav\" (avoirdupois, 28.349523125 g)"
      }
    ],
    "group": "drop",
    "words": [
      "how",
      "much",
      "copper",
      "cement",
      "cementation",
      "drop",
      "buy",
      "bars",
      "bus",
      "bar",
      "stoichiometric"
    ],
    "caution": "Silver nitrate and nitric acid burn skin and eyes; free acid on copper gives off toxic fume. The figure plans a purchase and is no procedure; local codes and licensed practice decide.",
    "source": "Cu + 2 Ag⁺ → Cu²⁺ + 2 Ag; 3 Cu + 8 HNO₃ → 3 Cu(NO₃)₂ + 2 NO + 4 H₂O"
  },
  {
    "id": "SILVERDROPPED",
    "name": "LOT.SILVERDROPPED",
    "description": "Silver that the weight loss of copper bars stands for, less what free acid ate: a check on the drop from the scale.",
    "parameters": [
      {
        "name": "copperLost",
        "description": "The weight that the bars lost.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "freeAcid",
        "description": "Free nitric acid that was in the liquor, in mol.",
        "wants": "a number from 0 up",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give the silver in.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": "unit",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The silver.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.SILVERDROPPED(1,\"lb\")",
        "shows": "3.39496…"
      }
    ],
    "group": "drop",
    "words": [
      "bar",
      "loss",
      "check",
      "drop",
      "scale",
      "cement",
      "yield"
    ],
    "caution": "Silver nitrate and nitric acid burn skin and eyes; local codes and licensed practice decide.",
    "source": "Cu + 2 Ag⁺ → Cu²⁺ + 2 Ag; 3 Cu + 8 HNO₃ → 3 Cu(NO₃)₂ + 2 NO + 4 H₂O"
  },
  {
    "id": "COPPERBARS",
    "name": "LOT.COPPERBARS",
    "description": "Whole copper bars to hang when each leaves a stub.",
    "parameters": [
      {
        "name": "copper",
        "description": "The copper that the drop needs.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "bar",
        "description": "The weight of one bar.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "barUnit",
        "description": "The unit of the bar's weight.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "stub",
        "description": "The share of a bar that is left as its stub.",
        "wants": "a share from 0 and below 1, or a text such as \"98%\"",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The number of bars.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.COPPERBARS(3.3,\"lb\",1,\"lb\",\"20%\")",
        "shows": "5"
      }
    ],
    "group": "drop",
    "words": [
      "how",
      "many",
      "bars",
      "hang",
      "stub",
      "bus",
      "bar",
      "copper",
      "count"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "DROPRATE",
    "name": "LOT.DROPRATE",
    "description": "First-order rate of a drop, from a lot's own readings: the line of least squares through ln(silver) over the hours.",
    "parameters": [
      {
        "name": "hours",
        "description": "The hours of the readings.",
        "wants": "a range, each cell a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "silver",
        "description": "The silver in solution at each, in one unit, in a range of the same shape.",
        "wants": "a range, each cell a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      }
    ],
    "returns": "The rate, in 1/h.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.DROPRATE({0;6;12;18;24},{1;0.5;0.25;0.125;0.0625})",
        "shows": "0.115524…"
      }
    ],
    "group": "drop",
    "words": [
      "kinetics",
      "speed",
      "regression",
      "slope",
      "half-life",
      "readings",
      "test"
    ],
    "caution": null,
    "source": "least squares; silver drops on copper by a first-order law in silver while diffusion holds it back"
  },
  {
    "id": "DROPHOURS",
    "name": "LOT.DROPHOURS",
    "description": "Hours until a first-order drop is down to a target.",
    "parameters": [
      {
        "name": "start",
        "description": "The silver in solution at the start.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "target",
        "description": "The silver to come to, in the same unit.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "rate",
        "description": "The rate, in 1/h.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "The hours.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.DROPHOURS(100,0.01,0.19188)",
        "shows": "48.00052…"
      }
    ],
    "group": "drop",
    "words": [
      "how",
      "long",
      "time",
      "wait",
      "agitation",
      "finished"
    ],
    "caution": "Silver nitrate burns skin and eyes; a drop is done when the test says so. Local codes and licensed practice decide.",
    "source": null
  },
  {
    "id": "DROPPED",
    "name": "LOT.DROPPED",
    "description": "Share of the silver that a first-order drop has dropped after a time.",
    "parameters": [
      {
        "name": "hours",
        "description": "The hours.",
        "wants": "a number from 0 to 10000",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "rate",
        "description": "The rate, in 1/h.",
        "wants": "a number above 0 up to 10000",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "The share dropped, as a fraction; format the cell as a percentage.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.DROPPED(24,0.1)",
        "shows": "0.909282…"
      }
    ],
    "group": "drop",
    "words": [
      "progress",
      "percent",
      "complete",
      "drop",
      "time"
    ],
    "caution": "Silver nitrate burns skin and eyes; a drop is done when the test says so. Local codes and licensed practice decide.",
    "source": null
  },
  {
    "id": "SILVERLEFT",
    "name": "LOT.SILVERLEFT",
    "description": "Silver that a salted liquor can still hold as free silver ion.",
    "parameters": [
      {
        "name": "chloride",
        "description": "The chloride left in solution, in mol/L.",
        "wants": "mol/L, above 0 up to 0.1",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "The silver, in g/L.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.SILVERLEFT(0.01)",
        "shows": "0.000001…"
      }
    ],
    "group": "drop",
    "words": [
      "salt",
      "test",
      "chloride",
      "solubility",
      "Ksp",
      "complete",
      "drop"
    ],
    "caution": "Silver nitrate burns skin and eyes; local codes and licensed practice decide.",
    "source": "solubility product of AgCl at 25 °C, 1.77e-10 mol²/L² (CRC Handbook, from memory; OpenStax Chemistry 2e prints 1.6e-10)"
  },
  {
    "id": "SALT",
    "name": "LOT.SALT",
    "description": "Salt that takes silver out of solution as chloride.",
    "parameters": [
      {
        "name": "silver",
        "description": "The silver in solution.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "excess",
        "description": "Salt beyond what the reaction takes, as a share.",
        "wants": "a share from 0 to 10, or a text such as \"98%\"",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give the salt in.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": "g",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The salt (NaCl).",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.SALT(100,\"g\")",
        "shows": "54.17701…"
      }
    ],
    "group": "drop",
    "words": [
      "sodium",
      "chloride",
      "last",
      "silver",
      "precipitate"
    ],
    "caution": "Silver nitrate burns skin and eyes; local codes and licensed practice decide.",
    "source": "Ag⁺ + NaCl → AgCl + Na⁺"
  },
  {
    "id": "CHLORIDESILVER",
    "name": "LOT.CHLORIDESILVER",
    "description": "Silver in dry silver chloride.",
    "parameters": [
      {
        "name": "chloride",
        "description": "The weight of the dry silver chloride.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give the silver in.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": "unit",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The silver.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.CHLORIDESILVER(100,\"g\")",
        "shows": "75.26483…"
      }
    ],
    "group": "drop",
    "words": [
      "AgCl",
      "wet",
      "work",
      "content"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "SILVERFROMCHLORIDE",
    "name": "LOT.SILVERFROMCHLORIDE",
    "description": "Reagents that turn dry silver chloride to silver: a metal, or glucose in caustic soda.",
    "parameters": [
      {
        "name": "chloride",
        "description": "The weight of the dry silver chloride.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "reagent",
        "description": "What it is turned with.",
        "wants": "one of zinc, iron, glucose",
        "otherwise": "zinc",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "excess",
        "description": "Reagent beyond what the reaction takes, as a share.",
        "wants": "a share from 0 to 10, or a text such as \"98%\"",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give the weights in.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": "unit",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "Three lines: the reagent, the caustic soda that goes with it, the silver that it gives.",
    "spills": true,
    "examples": [
      {
        "formula": "=LOT.SILVERFROMCHLORIDE(100,\"g\",\"zinc\")",
        "shows": "Reagent"
      }
    ],
    "group": "drop",
    "words": [
      "AgCl",
      "convert",
      "zinc",
      "iron",
      "sugar",
      "lye",
      "reduce"
    ],
    "caution": "Caustic soda burns; zinc and iron in acid give off hydrogen, which burns. The figure plans a purchase and is no procedure; local codes and licensed practice decide.",
    "source": "2 AgCl + Zn → 2 Ag + ZnCl₂; 2 AgCl + Fe → 2 Ag + FeCl₂; 2 AgCl + C₆H₁₂O₆ + 3 NaOH → 2 Ag + NaC₆H₁₁O₇ + 2 NaCl + 2 H₂O"
  },
  {
    "id": "GOLDDROP",
    "name": "LOT.GOLDDROP",
    "description": "Reagent that drops a weight of gold from a chloride liquor.",
    "parameters": [
      {
        "name": "gold",
        "description": "The gold in solution.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "reagent",
        "description": "Which reagent it is.",
        "wants": "one of sodium metabisulfite, ferrous sulfate heptahydrate, sulfur dioxide, oxalic acid, oxalic acid dihydrate",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "excess",
        "description": "Reagent beyond what the reaction takes, as a share.",
        "wants": "a share from 0 to 10, or a text such as \"98%\"",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give it in.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": "g",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The reagent.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.GOLDDROP(1,\"ozt\",\"sodium metabisulfite\",0,\"g\")",
        "shows": "22.51372…"
      }
    ],
    "group": "drop",
    "words": [
      "SMB",
      "metabisulfite",
      "copperas",
      "ferrous",
      "sulfate",
      "oxalic",
      "sulfur",
      "dioxide",
      "precipitate",
      "gold"
    ],
    "caution": "Gold liquors are acid, and the reagents give off sulfur dioxide or carbon dioxide. The figure plans a purchase and is no procedure; local codes and licensed practice decide.",
    "source": "4 HAuCl₄ + 3 Na₂S₂O₅ + 9 H₂O → 4 Au + 6 NaHSO₄ + 16 HCl; HAuCl₄ + 3 FeSO₄·7H₂O → Au + FeCl₃ + Fe₂(SO₄)₃ + HCl + 21 H₂O; 2 HAuCl₄ + 3 SO₂ + 6 H₂O → 2 Au + 3 H₂SO₄ + 8 HCl; 2 HAuCl₄ + 3 H₂C₂O₄ → 2 Au + 6 CO₂ + 8 HCl"
  },
  {
    "id": "DROPPLAN",
    "name": "LOT.DROPPLAN",
    "description": "The plan of a drop: when to hang the bars, look in, test, lift the bars and decant.",
    "parameters": [
      {
        "name": "start",
        "description": "Date and time of the start; format the times as date and time.",
        "wants": "a date, from March 1900 on (a cell formatted as date or date and time)",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "dropHours",
        "description": "The hours of the drop.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "settleHours",
        "description": "The hours to settle.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "Five lines of step and time.",
    "spills": true,
    "examples": [
      {
        "formula": "=LOT.DROPPLAN(46000.5,48,24)",
        "shows": "Hang the bars"
      }
    ],
    "group": "drop",
    "words": [
      "schedule",
      "when",
      "check",
      "times",
      "calendar",
      "batch"
    ],
    "caution": "Silver nitrate burns skin and eyes; a drop is done when the test says so. Local codes and licensed practice decide.",
    "source": null
  },
  {
    "id": "RINSED",
    "name": "LOT.RINSED",
    "description": "Concentration that is left after rinsing by decanting.",
    "parameters": [
      {
        "name": "start",
        "description": "The concentration at the start.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "retained",
        "description": "The liquid that stays behind at each decanting.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "rinse",
        "description": "The rinse water added each time, in the same unit.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "rinses",
        "description": "How many rinses.",
        "wants": "a whole number from 0 to 10000",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "The concentration, in the unit of the start.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.RINSED(20,50,450,3)",
        "shows": "0.02"
      }
    ],
    "group": "wash",
    "words": [
      "wash",
      "water",
      "decant",
      "cement",
      "silver",
      "dilution",
      "left"
    ],
    "caution": null,
    "source": "washing by decantation, xₙ = x₀ (u ÷ (u + v))ⁿ"
  },
  {
    "id": "RINSES",
    "name": "LOT.RINSES",
    "description": "Whole rinses by decanting that bring a concentration to a target.",
    "parameters": [
      {
        "name": "start",
        "description": "The concentration at the start.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "target",
        "description": "The concentration to come to, in the same unit.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "retained",
        "description": "The liquid that stays behind at each decanting.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "rinse",
        "description": "The rinse water added each time, in the same unit.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "The number of rinses.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.RINSES(20,0.02,50,450)",
        "shows": "3"
      }
    ],
    "group": "wash",
    "words": [
      "wash",
      "how",
      "many",
      "times",
      "decant",
      "water"
    ],
    "caution": null,
    "source": "washing by decantation, xₙ = x₀ (u ÷ (u + v))ⁿ"
  },
  {
    "id": "SPENTCOPPER",
    "name": "LOT.SPENTCOPPER",
    "description": "Copper in the spent liquor: what came with the alloy and what the drop put in.",
    "parameters": [
      {
        "name": "silver",
        "description": "The silver dropped.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "silverUnit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "copper",
        "description": "The copper that was in the charge.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "copperUnit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "volume",
        "description": "The volume of the spent liquor.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "volumeUnit",
        "description": "Its unit.",
        "wants": "one of L, mL, gal, galimp, ft3, m3",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "The copper, in g/L.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.SPENTCOPPER(0.925,\"kg\",0.075,\"kg\",10,\"L\")",
        "shows": "34.74623…"
      }
    ],
    "group": "wash",
    "words": [
      "waste",
      "liquor",
      "blue",
      "copper",
      "nitrate",
      "concentration"
    ],
    "caution": "Spent liquor is acid and holds copper: it is treated as waste by local water and waste codes and licensed practice.",
    "source": "Cu + 2 Ag⁺ → Cu²⁺ + 2 Ag"
  },
  {
    "id": "IRON",
    "name": "LOT.IRON",
    "description": "Iron that takes the copper out of a spent liquor again.",
    "parameters": [
      {
        "name": "copper",
        "description": "The copper in the liquor.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "allowance",
        "description": "Iron beyond what the reaction takes, as a share.",
        "wants": "a share from 0 to 10, or a text such as \"98%\"",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give the iron in.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": "unit",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The iron.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.IRON(1,\"kg\")",
        "shows": "0.878812…"
      }
    ],
    "group": "wash",
    "words": [
      "steel",
      "scrap",
      "copper",
      "recovery",
      "waste",
      "treatment",
      "cement",
      "copper"
    ],
    "caution": "Spent liquor is acid and holds metals; iron in it gives off hydrogen, which burns. Local water and waste codes and licensed practice decide.",
    "source": "Fe + Cu²⁺ → Fe²⁺ + Cu"
  },
  {
    "id": "SODA",
    "name": "LOT.SODA",
    "description": "Soda ash or caustic soda that neutralises free nitric acid.",
    "parameters": [
      {
        "name": "freeAcid",
        "description": "The free nitric acid, in mol.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "as",
        "description": "Which soda it is.",
        "wants": "one of Na2CO3, NaOH",
        "otherwise": "Na2CO3",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give it in.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": "kg",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The weight of soda.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.SODA(10,\"NaOH\")",
        "shows": "0.399967…"
      }
    ],
    "group": "wash",
    "words": [
      "neutralise",
      "sodium",
      "carbonate",
      "hydroxide",
      "lye",
      "caustic",
      "soda",
      "ash",
      "waste"
    ],
    "caution": "Neutralising is hot and foams, caustic soda burns. Local water and waste codes and licensed practice decide.",
    "source": "Na₂CO₃ + 2 HNO₃ → 2 NaNO₃ + CO₂ + H₂O; NaOH + HNO₃ → NaNO₃ + H₂O"
  },
  {
    "id": "HEATS",
    "name": "LOT.HEATS",
    "description": "Whole heats that a weight takes in a crucible.",
    "parameters": [
      {
        "name": "weight",
        "description": "The weight to melt.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "capacity",
        "description": "What the crucible holds.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "capacityUnit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "fill",
        "description": "The share to which it is filled, for a capacity given to the brim.",
        "wants": "a share above 0 to 1, or a text such as \"98%\"",
        "otherwise": "100%",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The number of heats.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.HEATS(25,\"kg\",6,\"kg\")",
        "shows": "5"
      }
    ],
    "group": "melt",
    "words": [
      "crucible",
      "melts",
      "pours",
      "furnace",
      "how",
      "many"
    ],
    "caution": "Hot metal and damp tools throw metal about: dry and preheat; local codes and licensed practice decide.",
    "source": null
  },
  {
    "id": "BARS",
    "name": "LOT.BARS",
    "description": "Whole bars from a weight, and what is left over.",
    "parameters": [
      {
        "name": "weight",
        "description": "The weight to pour.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "mould",
        "description": "The weight of one bar.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "mouldUnit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "Two lines: the bars, and the remainder in the unit of the weight.",
    "spills": true,
    "examples": [
      {
        "formula": "=LOT.BARS(250,\"ozt\",100,\"ozt\")",
        "shows": "Bars"
      }
    ],
    "group": "melt",
    "words": [
      "pour",
      "ingots",
      "mould",
      "remainder",
      "heel"
    ],
    "caution": "Hot metal and a damp mould throw metal about: dry and preheat; local codes and licensed practice decide.",
    "source": null
  },
  {
    "id": "CELLHOURS",
    "name": "LOT.CELLHOURS",
    "description": "Hours that a cell takes for a weight of silver, by Faraday's law.",
    "parameters": [
      {
        "name": "fine",
        "description": "The silver to deposit.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "amps",
        "description": "The current, in amperes.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "efficiency",
        "description": "The current efficiency, as a share.",
        "wants": "a share above 0 to 1, or a text such as \"98%\"",
        "otherwise": "95%",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The hours.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.CELLHOURS(1,\"kg\",100,\"100%\")",
        "shows": "2.48465…"
      }
    ],
    "group": "melt",
    "words": [
      "electrolysis",
      "current",
      "time",
      "crystal",
      "Faraday",
      "electrorefining"
    ],
    "caution": "The electrolyte is silver nitrate in nitric acid and the current is high; local electrical and waste codes and licensed practice decide.",
    "source": "Faraday's law with F = 96 485.332 12 C/mol (CODATA 2018)"
  },
  {
    "id": "CELLENERGY",
    "name": "LOT.CELLENERGY",
    "description": "Energy that a cell takes for a weight of silver.",
    "parameters": [
      {
        "name": "fine",
        "description": "The silver to deposit.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "volts",
        "description": "The cell voltage.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "efficiency",
        "description": "The current efficiency, as a share.",
        "wants": "a share above 0 to 1, or a text such as \"98%\"",
        "otherwise": "95%",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The energy, in kWh.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.CELLENERGY(1,\"kg\",1.5,\"100%\")",
        "shows": "0.372697…"
      }
    ],
    "group": "melt",
    "words": [
      "power",
      "electricity",
      "kilowatt",
      "hours",
      "cell",
      "cost"
    ],
    "caution": "The electrolyte is silver nitrate in nitric acid and the current is high; local electrical and waste codes and licensed practice decide.",
    "source": "Faraday's law with F = 96 485.332 12 C/mol (CODATA 2018)"
  },
  {
    "id": "CELLDRAW",
    "name": "LOT.CELLDRAW",
    "description": "Silver that base metal in the bars draws out of the electrolyte; the base metal is taken as copper.",
    "parameters": [
      {
        "name": "weight",
        "description": "The weight of the bars.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "fineness",
        "description": "Their silver fineness.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give the silver in.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": "ozt",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The silver drawn out.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.CELLDRAW(1000,\"ozt\",980)",
        "shows": "67.89928…"
      }
    ],
    "group": "melt",
    "words": [
      "electrolyte",
      "depletion",
      "anode",
      "base",
      "metal",
      "replenish",
      "silver",
      "nitrate"
    ],
    "caution": "The electrolyte is silver nitrate in nitric acid; local waste codes and licensed practice decide.",
    "source": "Cu + 2 Ag⁺ → Cu²⁺ + 2 Ag"
  },
  {
    "id": "PRICE",
    "name": "LOT.PRICE",
    "description": "A price per one unit of weight as a price per another.",
    "parameters": [
      {
        "name": "price",
        "description": "The price.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "fromUnit",
        "description": "The unit of weight that it is for.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "toUnit",
        "description": "The unit of weight to give it for.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "The price per the other unit, not rounded.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.PRICE(24,\"ozt\",\"lb\")",
        "shows": "350"
      }
    ],
    "group": "cost",
    "words": [
      "spot",
      "per",
      "ounce",
      "per",
      "pound",
      "per",
      "gram",
      "convert",
      "metal",
      "price"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "WEARCOST",
    "name": "LOT.WEARCOST",
    "description": "The share of a consumable's price that a use takes from its life, in one measure of life and use.",
    "parameters": [
      {
        "name": "price",
        "description": "The price of the consumable.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "life",
        "description": "How much it lasts: heats, pounds, hours.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "use",
        "description": "How much of that was used, in the same measure.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "The cost of the use, not rounded, since many small ones are added up.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.WEARCOST(60,25,1)",
        "shows": "2.4"
      }
    ],
    "group": "cost",
    "words": [
      "crucible",
      "mixer",
      "paddle",
      "heats",
      "life",
      "wear",
      "depreciation",
      "consumable",
      "spread"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "LOTCOST",
    "name": "LOT.LOTCOST",
    "description": "Cost of a lot: each quantity times its price, added up and rounded once to cents.",
    "parameters": [
      {
        "name": "quantities",
        "description": "The quantities.",
        "wants": "a range, each cell a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "prices",
        "description": "The price of one of each, in a range of the same shape.",
        "wants": "a range, each cell a number",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      }
    ],
    "returns": "The cost, to the cent.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.LOTCOST({2.5;1},{3.33;0.1})",
        "shows": "8.43"
      }
    ],
    "group": "cost",
    "words": [
      "expenses",
      "acid",
      "copper",
      "power",
      "labour",
      "consumables",
      "total",
      "sum"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "RECOVERY",
    "name": "LOT.RECOVERY",
    "description": "Recovery: outturn over fine weight charged.",
    "parameters": [
      {
        "name": "fineOut",
        "description": "The fine weight that came out.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "fineIn",
        "description": "The fine weight that went in, in the same unit.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "The recovery as a fraction; format the cell as a percentage.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.RECOVERY(98.5,100)",
        "shows": "0.985"
      }
    ],
    "group": "recovery",
    "words": [
      "yield",
      "outturn",
      "loss",
      "percent",
      "efficiency"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "RECOVERYU",
    "name": "LOT.RECOVERYU",
    "description": "Expanded uncertainty of a recovery, from the standard uncertainties of both weights, taken as independent.",
    "parameters": [
      {
        "name": "fineOut",
        "description": "The fine weight that came out.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "uOut",
        "description": "Its standard uncertainty.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "fineIn",
        "description": "The fine weight that went in.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "uIn",
        "description": "Its standard uncertainty. All four in one unit.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "k",
        "description": "The coverage factor.",
        "wants": "a coverage factor, above 0 up to 10",
        "otherwise": "2",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The expanded uncertainty of the recovery, as a fraction.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.RECOVERYU(98,0.98,100,0)",
        "shows": "0.0196"
      }
    ],
    "group": "recovery",
    "words": [
      "error",
      "tolerance",
      "plus",
      "minus",
      "accuracy",
      "yield",
      "coverage"
    ],
    "caution": null,
    "source": "JCGM 100:2008 (GUM), 5.1.2 and 6.2.1"
  },
  {
    "id": "UNACCOUNTED",
    "name": "LOT.UNACCOUNTED",
    "description": "Unaccounted metal: opening + received − shipped − closing, all in one unit. Above zero, metal is missing.",
    "parameters": [
      {
        "name": "opening",
        "description": "The metal at the start: a number or a range.",
        "wants": "a range, each cell a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "received",
        "description": "The metal that came in.",
        "wants": "a range, each cell a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "shipped",
        "description": "The metal that went out.",
        "wants": "a range, each cell a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "closing",
        "description": "The metal at the end.",
        "wants": "a range, each cell a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      }
    ],
    "returns": "The unaccounted metal, in the same unit.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.UNACCOUNTED(120,{30;45},{50;20},124)",
        "shows": "1"
      }
    ],
    "group": "recovery",
    "words": [
      "balance",
      "missing",
      "loss",
      "month",
      "inventory",
      "stock",
      "difference",
      "gap"
    ],
    "caution": null,
    "source": "material unaccounted for = (beginning inventory + receipts) − (removals + ending inventory)"
  },
  {
    "id": "BALANCE",
    "name": "LOT.BALANCE",
    "description": "The metal balance of a period as a block: the four terms, the difference, its expanded uncertainty, the share of throughput, the verdict.",
    "parameters": [
      {
        "name": "opening",
        "description": "The metal at the start: a number or a range, all in one unit.",
        "wants": "a range, each cell a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "received",
        "description": "The metal that came in.",
        "wants": "a range, each cell a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "shipped",
        "description": "The metal that went out.",
        "wants": "a range, each cell a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "closing",
        "description": "The metal at the end.",
        "wants": "a range, each cell a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "uOpening",
        "description": "The standard uncertainty of the opening.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "uReceived",
        "description": "The standard uncertainty of all that was received.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "uShipped",
        "description": "The standard uncertainty of all that was shipped.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "uClosing",
        "description": "The standard uncertainty of the closing.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "bias",
        "description": "The relative standard uncertainty that one scale shares in all four.",
        "wants": "a share from 0 to 1, or a text such as \"98%\"",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "k",
        "description": "The coverage factor.",
        "wants": "a coverage factor, above 0 up to 10",
        "otherwise": "2",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "Eight lines of label and value; the last is the verdict: within measurement, metal missing or metal over.",
    "spills": true,
    "examples": [
      {
        "formula": "=LOT.BALANCE(120,75,70,124,0.2,0.3,0.3,0.2)",
        "shows": "Opening"
      }
    ],
    "group": "recovery",
    "words": [
      "month",
      "inventory",
      "missing",
      "theft",
      "loss",
      "scale",
      "significance",
      "verdict",
      "material"
    ],
    "caution": null,
    "source": "material unaccounted for = (beginning inventory + receipts) − (removals + ending inventory); JCGM 100:2008 (GUM), 5.1.2"
  },
  {
    "id": "HELDBACK",
    "name": "LOT.HELDBACK",
    "description": "Where the fine metal of a lot is: an account that adds up to the charge, its last line what nobody has found.",
    "parameters": [
      {
        "name": "charged",
        "description": "The fine weight charged. All in one unit.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "dropped",
        "description": "The cement silver that was dropped.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "liquor",
        "description": "The silver left in the liquor, by test.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "stubs",
        "description": "The silver on the stubs.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "residues",
        "description": "The silver in filter and basket residues.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "crystal",
        "description": "The silver in crystal.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "Six lines of place, fine weight and share of the charge.",
    "spills": true,
    "examples": [
      {
        "formula": "=LOT.HELDBACK(100,98,0.5,1,0.5,96)",
        "shows": "Crystal"
      }
    ],
    "group": "recovery",
    "words": [
      "account",
      "losses",
      "stubs",
      "filters",
      "residue",
      "slimes",
      "liquor",
      "where",
      "is",
      "the",
      "silver"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "MONTHS",
    "name": "LOT.MONTHS",
    "description": "Fine metal in and out, recovery and number of lots, month by month and group by group.",
    "parameters": [
      {
        "name": "dates",
        "description": "The dates of the lots.",
        "wants": "a range, each cell a date, from March 1900 on (a cell formatted as date or date and time)",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "fineIn",
        "description": "Their fine weights charged, in one unit.",
        "wants": "a range, each cell a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "fineOut",
        "description": "Their outturns, in the same unit.",
        "wants": "a range, each cell a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "group",
        "description": "What to group by within a month: the client, for instance.",
        "wants": "a range, each cell a name",
        "otherwise": null,
        "optional": true,
        "shape": "range"
      }
    ],
    "returns": "A heading and a line for each month and group; format the first column as a date.",
    "spills": true,
    "examples": [
      {
        "formula": "=LOT.MONTHS({46000;46001},{100;50},{98;49})",
        "shows": "Month"
      }
    ],
    "group": "recovery",
    "words": [
      "monthly",
      "client",
      "summary",
      "throughput",
      "table",
      "report"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "PAYOUT",
    "name": "LOT.PAYOUT",
    "description": "Payout to the client, rounded once. Below zero the client owes.",
    "parameters": [
      {
        "name": "fine",
        "description": "The fine weight.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "price",
        "description": "The price per troy ounce of fine metal.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "payable",
        "description": "The share of the fine weight that is paid for.",
        "wants": "a share from 0 to 1, or a text such as \"98%\"",
        "otherwise": "100%",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "refiningCharge",
        "description": "The refining charge per troy ounce of payable fine weight.",
        "wants": "a number from 0 up",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "lotCharges",
        "description": "The charges for the lot as a whole.",
        "wants": "a number from 0 up",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "decimals",
        "description": "To how many decimals it is rounded, half away from zero; \"2 half-even\" rounds ties to the even digit.",
        "wants": "a whole number of decimals from 0 to 6, or a text such as \"2 half-even\"",
        "otherwise": "2",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The payout in money.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.PAYOUT(100,\"ozt\",24.5,\"97.5%\",0.5,25)",
        "shows": "2315"
      },
      {
        "formula": "=LOT.PAYOUT(10,\"ozt\",24,98)",
        "shows": "#VALUE! Cannot use payable = 98: could be a share or a percentage: write \"98%\" or 0.98"
      }
    ],
    "group": "payout",
    "words": [
      "pay",
      "client",
      "settle",
      "money",
      "owed",
      "cheque",
      "value",
      "terms"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "SETTLEMENT",
    "name": "LOT.SETTLEMENT",
    "description": "The settlement statement, line by line; its money lines add up to the payout to the cent.",
    "parameters": [
      {
        "name": "net",
        "description": "The net weight.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "fineness",
        "description": "The settled fineness.",
        "wants": "a fraction above 0 up to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "price",
        "description": "The price per troy ounce of fine metal.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "payable",
        "description": "The share of the fine weight that is paid for.",
        "wants": "a share from 0 to 1, or a text such as \"98%\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "refiningCharge",
        "description": "The refining charge per troy ounce of payable fine weight.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "treatmentCharge",
        "description": "The treatment charge per one unit of net weight, in the unit given.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "lotCharges",
        "description": "The charges for the lot as a whole.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "deduction",
        "description": "The minimum deduction, in parts per thousand or as a text with its scale.",
        "wants": "parts per thousand, 0 or from 0.1 to 999, or a text with its scale such as \"5‰\" or \"0.5%\"",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "decimals",
        "description": "To how many decimals money is rounded, half away from zero; \"2 half-even\" rounds ties to the even digit.",
        "wants": "a whole number of decimals from 0 to 6, or a text such as \"2 half-even\"",
        "otherwise": "2",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "Lines of label, amount and unit.",
    "spills": true,
    "examples": [
      {
        "formula": "=LOT.SETTLEMENT(100,\"ozt\",925,24,\"98%\",0.5,0.1,25)",
        "shows": "Net weight"
      }
    ],
    "group": "payout",
    "words": [
      "statement",
      "invoice",
      "client",
      "lines",
      "final",
      "reckoning",
      "terms",
      "charges"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "METALRETURN",
    "name": "LOT.METALRETURN",
    "description": "Fine weight to give back when the client is paid in metal, cut to 0.001 troy ounce.",
    "parameters": [
      {
        "name": "fine",
        "description": "The fine weight.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "payable",
        "description": "The share of the fine weight that is returned.",
        "wants": "a share from 0 to 1, or a text such as \"98%\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "charges",
        "description": "The charges, in money.",
        "wants": "a number from 0 up",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "price",
        "description": "The price per troy ounce at which charges are taken in metal; needed when there are charges.",
        "wants": "a number above 0",
        "otherwise": "none",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give the weight in.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": "ozt",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The fine weight to give back.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.METALRETURN(100,\"ozt\",\"98%\",48,24)",
        "shows": "96"
      },
      {
        "formula": "=LOT.METALRETURN(100,\"ozt\",\"98%\",48)",
        "shows": "#N/A Cannot compute yet: price is still to come: charges in money need a price to be taken in metal"
      }
    ],
    "group": "payout",
    "words": [
      "metal",
      "account",
      "return",
      "bar",
      "bullion",
      "toll",
      "give",
      "back"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "QUOTE",
    "name": "LOT.QUOTE",
    "description": "A quote as a block: payout at the low, likely and high fineness, with the price down, as quoted and up.",
    "parameters": [
      {
        "name": "weight",
        "description": "The net weight offered.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "low",
        "description": "The lowest fineness to reckon with.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "likely",
        "description": "The likely fineness.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "high",
        "description": "The highest fineness to reckon with.",
        "wants": "a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "price",
        "description": "The price per troy ounce of fine metal.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "payable",
        "description": "The share of the fine weight that is paid for.",
        "wants": "a share from 0 to 1, or a text such as \"98%\"",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "refiningCharge",
        "description": "The refining charge per troy ounce of payable fine weight.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "lotCharges",
        "description": "The charges for the lot as a whole.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "swing",
        "description": "By what share the price may move.",
        "wants": "a share from 0 to 1, or a text such as \"98%\"",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "A heading and five lines; money to the cent.",
    "spills": true,
    "examples": [
      {
        "formula": "=LOT.QUOTE(100,\"ozt\",915,925,930,24,\"98%\",0.5,25,\"5%\")",
        "shows": "Quote"
      }
    ],
    "group": "payout",
    "words": [
      "offer",
      "estimate",
      "range",
      "client",
      "price",
      "swing",
      "low",
      "high"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "MARGIN",
    "name": "LOT.MARGIN",
    "description": "What a lot leaves: metal value less payout less costs.",
    "parameters": [
      {
        "name": "fine",
        "description": "The fine weight.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "price",
        "description": "The price per troy ounce of fine metal.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "payout",
        "description": "What the client was paid.",
        "wants": "a number",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "costs",
        "description": "What the lot cost.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      }
    ],
    "returns": "The margin, to the cent.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.MARGIN(100,\"ozt\",24,2300,40)",
        "shows": "60"
      }
    ],
    "group": "payout",
    "words": [
      "profit",
      "earnings",
      "left",
      "over",
      "gain"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "BREAKEVEN",
    "name": "LOT.BREAKEVEN",
    "description": "The payable share at which a lot leaves nothing and costs nothing.",
    "parameters": [
      {
        "name": "fine",
        "description": "The fine weight.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "price",
        "description": "The price per troy ounce of fine metal.",
        "wants": "a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "costs",
        "description": "What the lot costs.",
        "wants": "a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "refiningCharge",
        "description": "The refining charge per troy ounce of payable fine weight.",
        "wants": "a number from 0 up",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      },
      {
        "name": "lotCharges",
        "description": "The charges for the lot as a whole.",
        "wants": "a number from 0 up",
        "otherwise": "0",
        "optional": true,
        "shape": "value"
      }
    ],
    "returns": "The payable share as a fraction; format the cell as a percentage.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.BREAKEVEN(100,\"ozt\",24,48)",
        "shows": "0.98"
      }
    ],
    "group": "payout",
    "words": [
      "terms",
      "lowest",
      "highest",
      "payable",
      "zero",
      "profit"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "FINEWEIGHTS",
    "name": "LOT.FINEWEIGHTS",
    "description": "Fine weights along columns: each argument is a column, or one value for all rows.",
    "parameters": [
      {
        "name": "weight",
        "description": "The net weights.",
        "wants": "a column or one value, each a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "unit",
        "description": "Their unit.",
        "wants": "a column or one value, each one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "fineness",
        "description": "Their finenesses.",
        "wants": "a column or one value, each a fraction from 0 to 1, parts per thousand from 100 to 1000, or a text with its scale such as \"92.5%\", \"925‰\", \"22k\" or \"sterling\"",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "to",
        "description": "The unit to give the fine weights in.",
        "wants": "a column or one value, each one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": "ozt",
        "optional": true,
        "shape": "range"
      }
    ],
    "returns": "A column of fine weights; an empty row stays empty, a row with a mistake shows its own error.",
    "spills": true,
    "examples": [
      {
        "formula": "=LOT.FINEWEIGHTS({100;200},\"ozt\",{925;900})",
        "shows": "92.5"
      }
    ],
    "group": "columns",
    "words": [
      "pure",
      "silver",
      "column",
      "list",
      "lots",
      "many",
      "rows"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "COPPERS",
    "name": "LOT.COPPERS",
    "description": "Copper for drops along columns: each argument is a column, or one value for all rows.",
    "parameters": [
      {
        "name": "fine",
        "description": "The fine silver in solution.",
        "wants": "a column or one value, each a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "unit",
        "description": "Its unit.",
        "wants": "a column or one value, each one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "allowance",
        "description": "Copper beyond what the reaction takes, as a share.",
        "wants": "a column or one value, each a share from 0 to 10, or a text such as \"98%\"",
        "otherwise": "0",
        "optional": true,
        "shape": "range"
      },
      {
        "name": "freeAcid",
        "description": "Free nitric acid in the liquor, in mol.",
        "wants": "a column or one value, each a number from 0 up",
        "otherwise": "0",
        "optional": true,
        "shape": "range"
      },
      {
        "name": "to",
        "description": "The unit to give the copper in.",
        "wants": "a column or one value, each one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": "unit",
        "optional": true,
        "shape": "range"
      }
    ],
    "returns": "A column of copper weights; an empty row stays empty, a row with a mistake shows its own error.",
    "spills": true,
    "examples": [
      {
        "formula": "=LOT.COPPERS({10;20},\"lb\")",
        "shows": "2.94553…"
      }
    ],
    "group": "columns",
    "words": [
      "cement",
      "cementation",
      "column",
      "list",
      "lots",
      "many",
      "rows"
    ],
    "caution": "Silver nitrate and nitric acid burn skin and eyes; free acid on copper gives off toxic fume. The figure plans a purchase and is no procedure; local codes and licensed practice decide.",
    "source": null
  },
  {
    "id": "RECOVERIES",
    "name": "LOT.RECOVERIES",
    "description": "Recoveries along columns: each argument is a column, or one value for all rows.",
    "parameters": [
      {
        "name": "fineOut",
        "description": "The fine weights that came out.",
        "wants": "a column or one value, each a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "fineIn",
        "description": "The fine weights that went in, in the same unit.",
        "wants": "a column or one value, each a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      }
    ],
    "returns": "A column of recoveries as fractions; an empty row stays empty, a row with a mistake shows its own error.",
    "spills": true,
    "examples": [
      {
        "formula": "=LOT.RECOVERIES({98;49},{100;50})",
        "shows": "0.98"
      }
    ],
    "group": "columns",
    "words": [
      "yield",
      "outturn",
      "column",
      "list",
      "lots",
      "many",
      "rows"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "PAYOUTS",
    "name": "LOT.PAYOUTS",
    "description": "Payouts along columns, to the same cent as PAYOUT: each argument is a column, or one value for all rows.",
    "parameters": [
      {
        "name": "fine",
        "description": "The fine weights.",
        "wants": "a column or one value, each a number above 0",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "unit",
        "description": "Their unit.",
        "wants": "a column or one value, each one of kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "price",
        "description": "The price per troy ounce of fine metal.",
        "wants": "a column or one value, each a number from 0 up",
        "otherwise": null,
        "optional": false,
        "shape": "range"
      },
      {
        "name": "payable",
        "description": "The share of the fine weight that is paid for.",
        "wants": "a column or one value, each a share from 0 to 1, or a text such as \"98%\"",
        "otherwise": "100%",
        "optional": true,
        "shape": "range"
      },
      {
        "name": "refiningCharge",
        "description": "The refining charge per troy ounce of payable fine weight.",
        "wants": "a column or one value, each a number from 0 up",
        "otherwise": "0",
        "optional": true,
        "shape": "range"
      },
      {
        "name": "lotCharges",
        "description": "The charges for the lot as a whole.",
        "wants": "a column or one value, each a number from 0 up",
        "otherwise": "0",
        "optional": true,
        "shape": "range"
      },
      {
        "name": "decimals",
        "description": "To how many decimals it is rounded, half away from zero; \"2 half-even\" rounds ties to the even digit.",
        "wants": "a column or one value, each a whole number of decimals from 0 to 6, or a text such as \"2 half-even\"",
        "otherwise": "2",
        "optional": true,
        "shape": "range"
      }
    ],
    "returns": "A column of payouts in money; an empty row stays empty, a row with a mistake shows its own error.",
    "spills": true,
    "examples": [
      {
        "formula": "=LOT.PAYOUTS({100;50},\"ozt\",24.5,\"97.5%\",0.5,25)",
        "shows": "2315"
      }
    ],
    "group": "columns",
    "words": [
      "pay",
      "client",
      "settle",
      "money",
      "column",
      "list",
      "lots",
      "many",
      "rows"
    ],
    "caution": null,
    "source": null
  },
  {
    "id": "VERSION",
    "name": "LOT.VERSION",
    "description": "The release of Lotwright and the edition of its constants, so that a shared workbook says what computed it.",
    "parameters": [],
    "returns": "Release and edition, as text.",
    "spills": false,
    "examples": [
      {
        "formula": "=LOT.VERSION()",
        "shows": "Lotwright 0.1.0, atomic weights 2024"
      }
    ],
    "group": "about",
    "words": [
      "about",
      "release",
      "edition",
      "constants"
    ],
    "caution": null,
    "source": null
  }
];
