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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give it in.",
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "shows": "14.583333333333334"
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
        "wants": "L, mL, gal, galimp, ft3, m3",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "to",
        "description": "The unit to give it in.",
        "wants": "L, mL, gal, galimp, ft3, m3",
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
        "wants": "ppt, %, fraction, karat",
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
        "shows": "916.6666666666666"
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "shows": "223.04580486104346"
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "shows": "850.8771929824561"
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
    "description": "Silver or copper to add to gold-bearing metal so that acid can part it.",
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
      }
    ],
    "returns": "The weight to add, in the unit given.",
    "spills": false,
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
      "silver"
    ],
    "caution": "Parting uses hot nitric acid and gives off toxic brown fume: the figure plans a purchase and is no procedure; local codes and licensed practice decide.",
    "source": null
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
    "group": "weights",
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "shows": "2.945539092335572"
      },
      {
        "formula": "=LOT.COPPER(3,\"lb\",\"13%\")",
        "shows": "0.9985377523017589"
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "shows": "3.394964279735625"
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
        "otherwise": null,
        "optional": false,
        "shape": "value"
      },
      {
        "name": "toUnit",
        "description": "The unit of weight to give it for.",
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
        "wants": "kg, g, mg, lb, ozav, ozt, dwt, gr, lbt",
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
