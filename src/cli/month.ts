import { readFileSync } from "node:fs";
import { massUnits } from "../core/measure/mass";
import { readShop } from "../lots/shop";
import { readWorkbook } from "../lots/where";
import { closedMonth, refusals } from "../month/close-month";
import { monthBasis } from "../month/month-basis";
import type { Measurement, MonthInput } from "../month/month-input";
import { missingColumns } from "../month/month-lots";
import { type Month, readMonth } from "../month/month-of";
import { ROWS, monthSheetName } from "../month/month-places";
import { readPerThousand, readPlain, readShare, shopMeasurement } from "../month/shop-measurement";
import { type StockFile, StockFault, readStock } from "../month/stock-file";
import { FileFault, openXlsx } from "../workbook/file";
import { FilePort } from "../workbook/file-port";
import type { Command } from "./command";
import { cellText } from "./cell-text";
import { checkOutput, readWorkbookFile, writeWhole } from "./files";
import { given } from "./given";
import { Misuse } from "./misuse";
import { progress } from "./progress";
import { systemReason } from "./system-reason";

const OPTIONS = {
  "--month": "2026-03",
  "--stock": "stock.csv",
  "--opening": "120.5",
  "--opening-uncertainty": "0.3",
  "--scale": "0.5g",
  "--assay": "1",
  "--bias": "0.05%",
  "--weigh-in-bias": "0.3%",
} as const;
type Named = ReadonlyMap<string, string>;

export const month: Command = {
  takes: "IN.xlsx OUT.xlsx --month 2026-03 --stock stock.csv [more]",
  does: "closes a month: a sheet with the metal balance, into a copy of the workbook",
  examples: [
    "lotwright month sample-workbooks/throughput.xlsx closed.xlsx --month 2026-01 --stock stock.csv --bias 0.05%",
    "lotwright month sample-workbooks/throughput.xlsx later.xlsx --month 2026-02 --stock stock.csv --bias 0.05% --opening 63 --opening-uncertainty 0.3",
  ],
  more: `The stock file tells what was counted at the end of the month and what was shipped in it:

    kind,what,weight,unit,fineness,litres,gramsPerLitre,uncertainty
    counted,Crystal,1306.5,g,999.9,,,
    counted,Liquor,,,,60,0.5,5%
    shipped,Crystal sold,20,ozt,999.9,,,

Its kind is counted, shipped, or lot for a lot that still lies as it came; an uncertainty is a share such as 5%, which
liquor needs. The workbook must know where its lots live (Set up a lot, in the pane).
--opening is in fine troy ounces, where there is no sheet of the month before. What the workbook keeps of the shop can be
told here: --scale 0.5g and --assay 1 (standard uncertainties, the assay's in parts per thousand), --bias 0.05% of the
scale, --weigh-in-bias 0.3% where lots are weighed in on another scale than the rest.
The file itself is never changed; a copy that is there already is replaced only with --force.`,
  endsWithOne: null,
  async run(words) {
    const { input, output, named } = asked(words);
    const wanted = monthIn(named.get("--month"));
    const stock = stockIn(named.get("--stock"));
    const bar = progress();
    try {
      const port = new FilePort(openXlsx(readWorkbookFile(input)));
      const { sheets, place } = await readWorkbook(port);
      if (place === null) throw new Misuse(`${input} does not know where its lots live: open it in Lotwright once, and set it up under Set up a lot`);
      if (typeof place === "string") throw new Misuse(place);
      const columns = missingColumns(place);
      if (columns !== null) throw new Misuse(columns);
      const of: MonthInput = { month: wanted, ...stock, opening: openingIn(named), ...measurementIn(named, shopMeasurement(await readShop(port), sheets)) };
      const basis = await monthBasis(place, wanted, of, (done, all) => bar.step("reading lots", done, all));
      const refused = refusals({ sheets, place }, of, basis);
      if (refused.length > 0) throw new Misuse(refused.join("\n"));
      bar.step("computing", 1, 2);
      await port.write([closedMonth({ sheets, place }, of, basis).change]);
      bar.end();
      for (const remark of [...place.changes, ...basis.remarks]) console.error(remark);
      const shown = await port.read({ sheet: monthSheetName(wanted), range: `A${ROWS.opening}:B${ROWS.lookFirst}` });
      writeWhole(output, port.file.bytes);
      for (const [label, value] of shown) console.log(`${String(label?.value)}\t${cellText(value?.value ?? null)}`);
      return 0;
    } catch (fault) {
      bar.end();
      if (!(fault instanceof FileFault)) throw fault;
      console.error(`${input}: ${fault.message}`);
      return 2;
    }
  },
};

function asked(words: readonly string[]): { readonly input: string; readonly output: string; readonly named: Named } {
  const { names: [input = "", output = ""], options, flags } = given(words, { names: ["the workbook to read", "the name of the one to write"], options: OPTIONS, flags: ["--force"] });
  checkOutput(input, output, flags.has("--force"));
  return { input, output, named: options };
}

function monthIn(written: string | undefined): Month {
  if (written === undefined) throw new Misuse("Say which month with --month 2026-03");
  const read = readMonth(written);
  if (!read) throw new Misuse(`Cannot read the month "${written}": write it as 2026-03`);
  return read;
}

function stockIn(path: string | undefined): StockFile {
  if (path === undefined) throw new Misuse("Name the file of what was counted and shipped with --stock stock.csv");
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(readFileSync(path));
  } catch (fault) {
    throw new Misuse(`Cannot read "${path}": ${fault instanceof TypeError ? "it is no text in UTF-8" : systemReason(fault)}`);
  }
  try {
    return readStock(text);
  } catch (fault) {
    throw fault instanceof StockFault ? new Misuse(fault.message) : fault;
  }
}

function openingIn(named: Named): MonthInput["opening"] {
  const [fine, uncertainty] = [named.get("--opening"), named.get("--opening-uncertainty")];
  if (fine === undefined && uncertainty === undefined) return null;
  if (fine === undefined || uncertainty === undefined) throw new Misuse("Give --opening and --opening-uncertainty together, both in fine troy ounces");
  const read = { fine: readPlain(fine), uncertainty: readPlain(uncertainty) };
  if (read.fine === null || read.uncertainty === null) throw new Misuse("Cannot read the opening: write plain numbers of troy ounces, such as --opening 120.5 --opening-uncertainty 0.3");
  return { fine: read.fine, uncertainty: read.uncertainty };
}

function measurementIn(named: Named, known: ReturnType<typeof shopMeasurement>): Measurement {
  const scale = told(named, "--scale", scaleIn, "a weight with its unit, such as 0.5g") ?? known.scale;
  const assay = told(named, "--assay", readPerThousand, "parts per thousand, such as 1") ?? known.assay;
  const bias = told(named, "--bias", readShare, "a share, such as 0.05%") ?? known.bias;
  const weighInBias = told(named, "--weigh-in-bias", readShare, "a share, such as 0.3%") ?? null;
  const missing = [scale ? [] : "--scale 0.5g", assay === undefined ? "--assay 1" : [], bias === undefined ? "--bias 0" : []].flat();
  if (!scale || assay === undefined || bias === undefined) throw new Misuse(`The workbook does not keep how well the shop measures: say it with ${missing.join(" and ")}`);
  return { scale, assay, bias, weighInBias };
}

function told<T>(named: Named, name: keyof typeof OPTIONS, read: (text: string) => T | null, wants: string): T | undefined {
  const written = named.get(name);
  if (written === undefined) return undefined;
  const value = read(written);
  if (value === null) throw new Misuse(`Cannot read ${name} "${written}": write ${wants}`);
  return value;
}

function scaleIn(text: string): Measurement["scale"] | null {
  const [, digits = "", unit = ""] = /^([\d.,]+)\s*([a-z]+)$/i.exec(text.trim()) ?? [];
  const [value, known] = [readPlain(digits), massUnits.lookUp(unit)];
  return value === null || !known ? null : { value, unit: known.symbol };
}

