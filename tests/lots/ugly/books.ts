import { Workbook } from "@cj-tech-master/excelts";
import { bytesOf, formula, listOn, march, put, type Content } from "./writing";

/** Workbooks as they are met in small shops, each untidy in its own way. All names and figures are invented. */
export const uglyBooks = {
  "pounds and short headings": poundsAndShortHeadings,
  "two-row headings": twoRowHeadings,
  "French Canada": frenchCanada,
  "United Kingdom": unitedKingdom,
  "protected": protectedSheet,
  "five thousand": fiveThousand,
  "no list": noList,
  "total below": totalBelow,
  "hidden and filtered": hiddenAndFiltered,
  "table": table,
  "bare ounces": bareOunces,
} as const satisfies Record<string, () => Promise<Uint8Array>>;

export type UglyBook = keyof typeof uglyBooks;

async function poundsAndShortHeadings(): Promise<Uint8Array> {
  const book = new Workbook();
  const notes = book.addWorksheet("To do");
  ["Call C-12 about the trays", "Order bars", "Fix fan"].forEach((text, i) => (notes.getCell(`A${i + 1}`).value = text));
  const sheet = book.addWorksheet("jobs 26");
  sheet.getCell("A1").value = "JOBS";
  const lots: readonly [string, number, string, string, number, number, number][] = [
    ["L0096", march(2), "C-07", "flatware", 18.6, 1.1, 92.5],
    ["L0097", march(4), "C-12", "sprues", 9.2, 0.4, 92.5],
    ["L0098", march(9), "C-03", "coin", 10.4, 0.4, 90],
    ["L0099", march(12), "C-07", "trays", 12.75, 0.5, 80],
  ];
  listOn(sheet, {
    headings: ["Job #", "Rec'd", "Cust.", "What", "Grs wt (lbs)", "Pail wt, lbs", "Nett, lbs", "Assay %", "Fine ozt", "Spot $/oz t", "Pay %", "R/C ($/ozt)", "Melt fee $", "Check $", "initials"],
    headingRow: 3,
    rows: lots.map(([lot, date, client, goods, gross, tare, assay], i): Content[] => {
      const r = 4 + i;
      const net = gross - tare;
      const fine = (net * (175 / 12) * assay) / 100;
      const pay = fine * (24.5 * 0.95 - 0.5) - 25;
      return [lot, date, client, goods, gross, tare, formula(`E${r}-F${r}`, net), assay, formula(`G${r}*175/12*H${r}/100`, fine), 24.5, 95, 0.5, 25, formula(`ROUND(I${r}*(J${r}*K${r}/100-L${r})-M${r},2)`, Math.round(pay * 100) / 100), "KM"];
    }),
    formats: { B: "m/d/yyyy", E: "0.00", F: "0.00", G: "0.00", I: "#,##0.000", N: "$#,##0.00" },
  });
  return bytesOf(book);
}

async function twoRowHeadings(): Promise<Uint8Array> {
  const book = new Workbook();
  const sheet = book.addWorksheet("Lots 2026");
  sheet.mergeCells("A1:K2");
  sheet.getCell("A1").value = "Small shop – lots received, weights and settlement";
  const groups: readonly [string, string][] = [["A5:A6", "Lot no."], ["B5:B6", "Date in"], ["C5:C6", "Client"], ["D5:F5", "Weights (g)"], ["G5:H5", "Silver"], ["I5:K5", "Settlement ($)"]];
  for (const [range, text] of groups) {
    sheet.mergeCells(range);
    sheet.getCell(range.split(":")[0] ?? "").value = text;
  }
  ["Gross", "Tare", "Net", "Fineness ‰", "Fine (ozt)", "Price per ozt", "Payable %", "Payout"].forEach((text, i) => put(sheet, 6, 4 + i, text));
  const lots: readonly [string, number, string, number, number, number][] = [
    ["2026-011", march(3), "North Bench", 4210, 210, 925],
    ["2026-012", march(5), "C-15", 1500.5, 0.5, 835],
    ["2026-013", march(5), "C-03", 820, 20, 900],
    ["2026-014", march(18), "North Bench", 7600, 100, 925],
  ];
  lots.forEach(([lot, date, client, gross, tare, fineness], i) => {
    const r = 7 + i;
    const net = gross - tare;
    const fine = (net * fineness) / 1000 / 31.1034768;
    [lot, date, client, gross, tare, formula(`D${r}-E${r}`, net), fineness, formula(`F${r}*G${r}/1000/31.1034768`, fine), 24, 0.95, formula(`ROUND(H${r}*I${r}*J${r},2)`, Math.round(fine * 24 * 95) / 100)].forEach((content, c) => put(sheet, r, c + 1, content));
    sheet.getCell(`B${r}`).numFmt = "dd-mmm-yy";
    sheet.getCell(`J${r}`).numFmt = "0.0%";
    sheet.getCell(`H${r}`).numFmt = "#,##0.000";
  });
  return bytesOf(book);
}

async function frenchCanada(): Promise<Uint8Array> {
  const book = new Workbook();
  const sheet = book.addWorksheet("Réception");
  sheet.getCell("A1").value = "Lots reçus en mars (chiffres inventés)";
  const lots: readonly [string, number, string, string, number, number, number][] = [
    ["26-03-01", march(2), "Atelier Nord", "Couverts", 7.5, 0.25, 925],
    ["26-03-02", march(6), "C-21", "Grenaille", 1.48, 0.03, 999],
    ["26-03-03", march(11), "Atelier Sud", "Plateaux", 5.12, 0.12, 800],
  ];
  listOn(sheet, {
    headings: ["N° de lot", "Date de réception", "Client", "Matière", "Poids brut (kg)", "Tare (kg)", "Poids net (kg)", "Titre (‰)", "Argent fin (kg)", "Cours ($/once troy)", "Taux payable", "Frais d’affinage ($/once troy)", "Frais du lot ($)", "Montant à payer ($)", "Récupéré (kg)", "État"],
    headingRow: 4,
    rows: lots.map(([lot, date, client, goods, gross, tare, titre], i): Content[] => {
      const r = 5 + i;
      const net = gross - tare;
      const fine = (net * titre) / 1000;
      const ounces = fine / 0.0311034768;
      return [lot, date, client, goods, gross, tare, formula(`E${r}-F${r}`, net), titre, formula(`G${r}*H${r}/1000`, fine), 33.5, 0.96, 0.75, 40, formula(`ROUND(I${r}/0.0311034768*(J${r}*K${r}-L${r})-M${r},2)`, Math.round((ounces * (33.5 * 0.96 - 0.75) - 40) * 100) / 100), i === 0 ? 6.61 : null, i === 0 ? "réglé" : "en cours"];
    }),
    formats: { B: "[$-C0C]d mmm yyyy;@", E: "#,##0.000", F: "#,##0.000", G: "#,##0.000", I: "#,##0.0000", K: "0.0 %", N: '#,##0.00 "$"' },
  });
  return bytesOf(book);
}

async function unitedKingdom(): Promise<Uint8Array> {
  const book = new Workbook();
  const sheet = book.addWorksheet("Parcels");
  sheet.getCell("B2").value = "Parcels in";
  const lots: readonly [number, number, string, string, number, number, string][] = [
    [1041, march(3), "A/C 7", "Teaspoons, marked 925", 3.41, 0.21, "92.5%"],
    [1042, march(10), "A/C 12", "Salvers", 6.05, 0.05, "Britannia"],
    [1044, march(17), "A/C 7", "Lemel", 0.905, 0.005, "91.0%"],
  ];
  // The list begins in column B, and column H between its columns is empty.
  listOn(sheet, {
    headings: [null, "Parcel no.", "Date recd", "A/c", "Particulars", "Gross wt kg", "Tare kg", "Nett wt kg", "Assay as written", "Fine (kg)", "Fix £/kg", "Paid for", "Treatment charge £/kg", "Settlement £", "Outturn kg", "Recovery"],
    headingRow: 4,
    rows: lots.map(([lot, date, client, goods, gross, tare, assay], i): Content[] => {
      const r = 5 + i;
      const net = gross - tare;
      const share = [0.925, 0.958, 0.91][i] ?? 0;
      const fine = net * share;
      return [null, lot, date, client, goods, gross, tare, formula(`F${r}-G${r}`, net), assay, Math.round(fine * 1e4) / 1e4, 610, 0.95, 12, formula(`ROUND(J${r}*K${r}*L${r}-H${r}*M${r},2)`, Math.round((Math.round(fine * 1e4) / 1e4 * 610 * 0.95 - net * 12) * 100) / 100), null, null];
    }),
    formats: { C: "dd/mm/yyyy", L: "0%", N: "[$£-809]#,##0.00" },
  });
  return bytesOf(book);
}

async function protectedSheet(): Promise<Uint8Array> {
  const book = new Workbook();
  const sheet = book.addWorksheet("Lots");
  listOn(sheet, { headings: ["Lot", "Date", "Client", "Gross (g)", "Fineness"], headingRow: 1, rows: [["2026-001", march(2), "C-07", 512.5, 925], ["2026-002", march(3), "C-12", 230, 800]], formats: { B: "yyyy-mm-dd" } });
  await sheet.protect("", { selectLockedCells: true });
  return bytesOf(book);
}

export const MANY = 5000;

async function fiveThousand(): Promise<Uint8Array> {
  const book = new Workbook();
  const sheet = book.addWorksheet("All lots");
  const rows = Array.from({ length: MANY }, (_, i): Content[] => {
    const r = 2 + i;
    const gross = 200 + ((i * 7919) % 9000);
    const fineness = [925, 900, 800, 835][i % 4] ?? 925;
    return [`L${String(i + 1).padStart(5, "0")}`, 44_000 + Math.floor(i / 2.5), `C-${String(1 + ((i * 31) % 40)).padStart(2, "0")}`, gross, fineness, formula(`D${r}*E${r}/1000`, (gross * fineness) / 1000), i % 9 === 8 ? null : Math.round(gross * fineness * 0.97) / 1000];
  });
  listOn(sheet, { headings: ["Lot number", "Date received", "Customer", "Weight (g)", "Purity (ppt)", "Pure silver (g)", "Recovered (g)"], headingRow: 1, rows });
  for (let r = 2; r < MANY + 2; r++) sheet.getCell(`B${r}`).numFmt = "yyyy-mm-dd";
  return bytesOf(book);
}

async function noList(): Promise<Uint8Array> {
  const book = new Workbook();
  const sheet = book.addWorksheet("Scribbles");
  sheet.getCell("A1").value = "Silver 24.10 yesterday, 24.50 today";
  sheet.getCell("A3").value = "Big pail";
  sheet.getCell("B3").value = 12.5;
  sheet.getCell("A4").value = "Small pail";
  sheet.getCell("B4").value = 8.25;
  put(sheet, 5, 2, formula("SUM(B3:B4)", 20.75));
  sheet.getCell("D7").value = "Net effect of the new fan: less fume";
  const prices = book.addWorksheet("Prices");
  [["Price", "Date", "Unit"], [24.1, march(1), "ozt"], [24.5, march(2), "ozt"]].forEach((row, r) => row.forEach((content, c) => put(prices, r + 1, c + 1, content)));
  return bytesOf(book);
}

async function totalBelow(): Promise<Uint8Array> {
  const book = new Workbook();
  const headings = ["Lot", "Client", "Date", "Gross (g)", "Tare (g)", "Net (g)", "Fineness", "Fine weight (ozt)"];
  const page = (name: string, lots: readonly (readonly [string, number, number])[], blankRows: number): void => {
    const sheet = book.addWorksheet(name);
    listOn(sheet, {
      headings,
      headingRow: 2,
      rows: lots.map(([lot, day, gross], i): Content[] => {
        const r = 3 + i;
        return [lot, "C-07", day, gross, 10, formula(`D${r}-E${r}`, gross - 10), 925, formula(`F${r}*G${r}/31103.4768`, ((gross - 10) * 925) / 31103.4768)];
      }),
      formats: { C: "yyyy-mm-dd", H: "0.000" },
    });
    const last = 2 + lots.length;
    const total = last + 1 + blankRows;
    put(sheet, total, 1, "Total");
    put(sheet, total, 6, formula(`SUM(F3:F${last})`, lots.reduce((sum, [, , gross]) => sum + gross - 10, 0)));
    put(sheet, total, 8, formula(`SUM(H3:H${last})`, lots.reduce((sum, [, , gross]) => sum + ((gross - 10) * 925) / 31103.4768, 0)));
    put(sheet, total + 2, 1, "Weights on the big scale; it was checked on the first of the month.");
  };
  page("March", [["26-03-01", march(2), 510], ["26-03-02", march(9), 1210], ["26-03-03", march(20), 860], ["26-03-04", march(27), 75]], 0);
  page("April", [["26-04-01", march(33), 640], ["26-04-02", march(40), 330]], 1);
  return bytesOf(book);
}

async function hiddenAndFiltered(): Promise<Uint8Array> {
  const book = new Workbook();
  const sheet = book.addWorksheet("Book");
  const clients = ["C-07", "=HYPER", "+48 shop", "-none-", "@bench"];
  listOn(sheet, {
    headings: ["Batch no", "Customer", "Weighed in", "Gross", "Tare", "Net", "Unit", "Fineness", "Basis", "Fine silver (ozt)", "Status"],
    headingRow: 5,
    rows: clients.map((client, i): Content[] => {
      const r = 6 + i;
      return [`B-${i + 8}`, client, march(2 + i), 100 + i, 1, formula(`D${r}-E${r}`, 99 + i), i % 2 === 0 ? "ozt" : "lbs", 900, "stamp", formula(`F${r}*H${r}/1000*IF(G${r}="lbs",175/12,1)`, ((99 + i) * 900) / 1000 * (i % 2 === 0 ? 1 : 175 / 12)), i < 3 ? "settled" : "open"];
    }),
    formats: { C: "d mmm yyyy" },
  });
  // Beside the list, one empty column away, a box of prices.
  put(sheet, 5, 13, "Price");
  put(sheet, 6, 13, 24.5);
  sheet.getColumn("E").hidden = true;
  sheet.getColumn("I").hidden = true;
  sheet.autoFilter = "A5:K10";
  sheet.getRow(7).hidden = true;
  sheet.getRow(10).hidden = true;
  return bytesOf(book);
}

async function table(): Promise<Uint8Array> {
  const book = new Workbook();
  const sheet = book.addWorksheet("Intake");
  sheet.addTable({
    name: "Lots",
    ref: "B3",
    headerRow: true,
    columns: ["Ticket", "Date", "Client", "Item", "Net (g)", "Fineness", "Fine (g)"].map((name) => ({ name })),
    rows: [
      ["T-9", march(2), "C-07", "rings", 120, 925, 111],
      ["T-10", march(5), "C-12", "chains", 310, 800, 248],
      ["", "", "", "", "", "", ""].map(() => null),
    ],
  });
  for (const r of [4, 5]) {
    put(sheet, r, 8, formula(`F${r}*G${r}/1000`, r === 4 ? 111 : 248));
    sheet.getCell(`C${r}`).numFmt = "yyyy-mm-dd";
  }
  return bytesOf(book);
}

async function bareOunces(): Promise<Uint8Array> {
  const book = new Workbook();
  const sheet = book.addWorksheet("Lots");
  listOn(sheet, { headings: ["Lot", "Client", "Wt (oz)", "Purity", "Fine oz"], headingRow: 1, rows: [["A-1", "C-07", 100, 92.5, 92.5], ["A-2", "C-12", 50, 90, 45], ["A-3", "C-07", 60, 80, 48]] });
  return bytesOf(book);
}
