import { Workbook } from "@cj-tech-master/excelts";
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";

/** One red pixel. */
const PNG = "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mP8z8BQDwAEhQGAhKmMIQAAAABJRU5ErkJggg==";

/** A shop's book with all that people put into one: styles, a name, a list to choose from, a comment, a picture, a table, a chart. */
export async function shopBook(): Promise<Uint8Array> {
  const book = new Workbook();
  const lots = book.addWorksheet("Lots");
  lots.columns = [{ width: 12 }, { width: 18 }, { width: 14 }];
  lots.addRow(["Lot", "Client", "Gross, g", "Fineness", "Fine, g"]);
  [
    ["L-001", "Client A", 1250.5, 925],
    ["L-002", "Client B", 310.25, 800],
    ["L-003", "Client A & Sons", 98.75, 835],
  ].forEach((cells, i) => lots.addRow([...cells, { formula: `C${i + 2}*D${i + 2}/1000`, result: Number(cells[2]) * Number(cells[3]) / 1000 }]));
  lots.getRow(1).font = { bold: true, color: { argb: "FF884400" } };
  lots.getCell("C2").numFmt = "#,##0.00";
  lots.getCell("B6").dataValidation = { type: "list", allowBlank: true, formulae: ['"Client A,Client B,Client C"'] };
  lots.getCell("A2").note = "Weighed twice";
  lots.mergeCells("A8:C8");
  lots.getCell("A8").value = "  spaced\nand broken  ";
  lots.addImage(book.addImage({ base64: PNG, extension: "png" }), "G2:H4");
  lots.addConditionalFormatting({ ref: "D2:D4", rules: [{ type: "cellIs", operator: "lessThan", priority: 1, formulae: [835], style: { font: { bold: true } } }] });
  book.definedNames.add("Lots!$C$2", "FirstGross");
  const prices = book.addWorksheet("Prices");
  prices.addTable({ name: "Assumed", ref: "A1", headerRow: true, columns: [{ name: "Metal" }, { name: "Price" }], rows: [["silver", 24.5], ["copper", 0.009]] });
  prices.state = "visible";
  book.addWorksheet("Notes").state = "hidden";
  return withChart(new Uint8Array(await book.xlsx.writeBuffer()));
}

/** Hangs a column chart of the fine weights into the drawing that carries the picture. */
function withChart(bytes: Uint8Array): Uint8Array {
  const parts = unzipSync(bytes);
  const change = (path: string, from: string | RegExp, to: string): void => {
    const text = strFromU8(parts[path] ?? new Uint8Array());
    if (text.search(from) < 0) throw new Error(`${path} has no ${String(from)}`);
    parts[path] = strToU8(text.replace(from, to));
  };
  const drawing = "http://schemas.openxmlformats.org/drawingml/2006";
  const office = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  change("xl/drawings/drawing1.xml", /<\/xdr:wsDr>/, `<xdr:twoCellAnchor><xdr:from><xdr:col>6</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>6</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:to><xdr:col>12</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>20</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:to><xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="9" name="Chart 1"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off xmlns:a="${drawing}/main" x="0" y="0"/><a:ext xmlns:a="${drawing}/main" cx="0" cy="0"/></xdr:xfrm><a:graphic xmlns:a="${drawing}/main"><a:graphicData uri="${drawing}/chart"><c:chart xmlns:c="${drawing}/chart" xmlns:r="${office}" r:id="rIdChart"/></a:graphicData></a:graphic></xdr:graphicFrame><xdr:clientData/></xdr:twoCellAnchor></xdr:wsDr>`);
  change("xl/drawings/_rels/drawing1.xml.rels", /<\/Relationships>/, `<Relationship Id="rIdChart" Type="${office}/chart" Target="../charts/chart1.xml"/></Relationships>`);
  change("[Content_Types].xml", /<\/Types>/, '<Override PartName="/xl/charts/chart1.xml" ContentType="application/vnd.openxmlformats-officedocument.drawingml.chart+xml"/></Types>');
  parts["xl/charts/chart1.xml"] = strToU8(
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<c:chartSpace xmlns:c="${drawing}/chart" xmlns:a="${drawing}/main"><c:chart><c:autoTitleDeleted val="1"/><c:plotArea><c:layout/><c:barChart><c:barDir val="col"/><c:grouping val="clustered"/><c:ser><c:idx val="0"/><c:order val="0"/><c:cat><c:strRef><c:f>Lots!$A$2:$A$4</c:f></c:strRef></c:cat><c:val><c:numRef><c:f>Lots!$E$2:$E$4</c:f></c:numRef></c:val></c:ser><c:axId val="1"/><c:axId val="2"/></c:barChart><c:catAx><c:axId val="1"/><c:scaling/><c:delete val="0"/><c:axPos val="b"/><c:crossAx val="2"/></c:catAx><c:valAx><c:axId val="2"/><c:scaling/><c:delete val="0"/><c:axPos val="l"/><c:crossAx val="1"/></c:valAx></c:plotArea></c:chart></c:chartSpace>`,
  );
  return zipSync(parts, { mtime: "2024-03-05T10:20:30" });
}
