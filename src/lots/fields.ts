/** What is known of a lot, field by field. */
export type FieldId =
  | "lot" | "date" | "client" | "description"
  | "gross" | "tare" | "net" | "unit"
  | "fineness" | "finenessBasis" | "fineWeight"
  | "price" | "payable" | "refiningCharge" | "treatmentCharge" | "lotCharges" | "deduction" | "payout"
  | "copper" | "copperBars" | "acid"
  | "outturn" | "recovery" | "status";

/** What the cells of a field hold. */
export type Kind =
  | "number of a lot" | "date" | "name" | "text" | "unit"
  | "mass" | "volume" | "fineness" | "share" | "per thousand" | "per mass" | "money" | "count";

export interface Field {
  readonly id: FieldId;
  /** In the words of the shop; also the heading of a column that is added. */
  readonly title: string;
  readonly kind: Kind;
  /** Headings that say it outright. */
  readonly says: readonly string[];
  /** Headings that may mean it, if nothing says it better. */
  readonly hints: readonly string[];
  /** From which fields a formula computes it; none where it is typed. */
  readonly from: readonly FieldId[];
}

const phrases = (text: string): readonly string[] => text.split(";").map((phrase) => phrase.trim()).filter((phrase) => phrase !== "");

const field = (id: FieldId, title: string, kind: Kind, says: string, hints: string, from: readonly FieldId[] = []): Field => ({
  id, title, kind, says: phrases(says), hints: phrases(hints), from,
});

/** Phrases are written as headings are compared: small letters, no accents, without "of" and "the" (words.ts). */
export const fields: readonly Field[] = [
  field("lot", "Lot", "number of a lot",
    "lot; lot no; lot number; lot id; lot ref; lot reference; no lot; numero lot; no dossier; batch; batch no; batch number; job no; job number; ticket no; ticket number; parcel no; parcel number; intake no",
    "no; number; numero; id; ref; reference; ref no; job; ticket; docket; parcel; dossier; item no"),
  field("date", "Date", "date",
    "date; date in; date received; received on; rec d date; recd date; date recd; date weighed; weighed in; weigh in; weigh in date; intake date; came in on; date recu; date recue; date reception; recu le; date entree; date pesee",
    "received; recd; recu; day; jour; came; came in; reception; entree; arrived; when"),
  field("client", "Client", "name",
    "client; client code; client no; client name; client id; customer; customer name; customer code; cust; supplier; fournisseur; nom client; code client; cliente; seller; consignor",
    "from; name; nom; account; ac; acct; party; owner; who; de; vendor; provenance"),
  field("description", "Goods", "text",
    "description; desc; goods; material; what it is; type material; scrap type; kind scrap; metal description; description goods; nature; matiere; marchandise; designation; description matiere; particulars",
    "what; item; items; type; kind; details; article; articles; scrap; objet; objets; remarks; notes; form"),
  field("gross", "Gross", "mass",
    "gross; gross weight; gross wt; wt gross; weight gross; gr wt; grs wt; g wt; brut; poids brut; as received; weight as received; wt as received; received weight; received wt; rec wt; masse brute",
    "weight in; wt in; in; weighed; scale weight; total weight; total wt; poids recu; pesee"),
  field("tare", "Tare", "mass",
    "tare; tare weight; tare wt; tr wt; container weight; container wt; pail weight; poids tare; poids contenant; masse tare; tare contenant",
    "container; pail; bucket; tub; tray; contenant; seau; less container"),
  field("net", "Net", "mass",
    "net; net weight; net wt; wt net; weight net; nett; nett weight; nett wt; n wt; poids net; masse nette; net scrap weight; net charge",
    "weight; wt; poids; masse; scrap weight; metal weight; mass; charge weight", ["gross", "tare"]),
  field("unit", "Unit", "unit",
    "unit; units; unit weight; weight unit; wt unit; uom; um; u m; unit measure; unite; unites; unite poids; unite mesure",
    "in; measure; mesure; weighed in"),
  field("fineness", "Fineness", "fineness",
    "fineness; purity; assay; silver assay; ag assay; millesimal; millesimal fineness; parts per thousand; titre; titre argent; titre metal; purete; teneur; teneur argent; fineness as written; agreed fineness; fineness agreed; settled fineness; finesse; ag fineness; assay result; karat",
    "fine; fin; stamp; mark; marked; hallmark; quality; grade; poincon; ag; silver; argent; standard; std; silver content; ppt"),
  field("finenessBasis", "Fineness from", "text",
    "fineness from; fineness basis; basis fineness; basis; assay basis; source fineness; assay by; assayed by; tested by; how known; base titre; source titre; methode essai; essai par; titre selon; assay method",
    "method; methode; source; essai; stamp or assay; test"),
  field("fineWeight", "Fine weight", "mass",
    "fine weight; fine wt; fine silver; fine silver weight; fine silver content; fine metal; fine content; fine charged; weight fine; pure weight; pure wt; pure silver; pure silver weight; contained silver; contained weight; silver contained; poids fin; masse fine; argent fin; argent pur; poids argent fin; metal fin; argent contenu; fine in; agw fine",
    "fine; fin; fines; pure; pur; contained; content; contenu; silver; silver content; ag; argent; ag content; silver weight", ["net", "fineness"]),
  field("price", "Price", "per mass",
    "price; silver price; price silver; price used; spot price; spot; fix; fix price; metal price; ag price; market price; price per; cours; cours argent; prix; prix argent; prix metal",
    "rate; market; taux; silver", []),
  field("payable", "Payable", "share",
    "payable; payable share; share payable; percent payable; pct payable; percent paid; pct paid; share paid; pay rate; settlement rate; payable rate; part payee; part payable; pourcentage paye; taux paye; taux payable; paid for",
    "pays; pay; paid; terms; conditions; paye; rate; payout; return"),
  field("refiningCharge", "Refining charge", "per mass",
    "refining charge; refining charges; refining fee; refining cost; refining chg; refining; rc; refine charge; frais affinage; affinage; charge affinage",
    "refine; toll"),
  field("treatmentCharge", "Treatment charge", "per mass",
    "treatment charge; treatment charges; treatment fee; treatment chg; treatment; tc; processing charge; processing fee; frais traitement; traitement; charge traitement",
    "processing; handling per"),
  field("lotCharges", "Lot charges", "money",
    "lot charge; lot charges; charges; charges lot; charges on lot; lot fee; lot fees; fees; flat fee; fixed charge; fixed charges; handling charge; handling fee; melt charge; melt fee; assay fee; assay charge; frais; frais lot; frais fixes; frais fonte",
    "fee; charge; handling; deductions; costs; less"),
  field("deduction", "Deduction", "per thousand",
    "deduction; minimum deduction; min deduction; unit deduction; fineness deduction; retenue; retenue minimale; deduction minimale; deduction titre",
    "deduct; less units"),
  field("payout", "Payout", "money",
    "payout; pay out; payout client; to pay; amount to pay; amount due; amount paid; paid out; due client; owed client; payment; settlement; settlement amount; net payable; net to client; paiement; montant a payer; montant paye; a payer; a verser; reglement; montant verse; cheque; pays out",
    "amount; total; total due; paid; pays; owed; due; value; montant; verse; paye; client gets; check",
    ["fineWeight", "price"]),
  field("copper", "Copper", "mass",
    "copper; copper needed; copper for drop; copper weight; copper wt; copper demand; cu; cu needed; cu wt; cuivre; cuivre requis; poids cuivre; cuivre pour precipitation", "bar weight needed", ["fineWeight"]),
  field("copperBars", "Copper bars", "count",
    "copper bars; cu bars; bars to hang; bars hang; copper bars to hang; barres; barres cuivre; nombre barres; no bars", "bars; bar count", ["copper"]),
  field("acid", "Nitric acid", "volume",
    "acid; nitric; nitric acid; acid needed; hno3; acide; acide nitrique; acid volume; volume acid; volume acide", "", ["net", "fineness"]),
  field("outturn", "Outturn", "mass",
    "outturn; out turn; fine out; silver out; recovered; silver recovered; recovered silver; recovered weight; recovered wt; fine recovered; actual fine; weight out; wt out; crystal; crystal weight; crystal out; argent recupere; poids recupere; recupere; argent obtenu; poids obtenu; obtenu; sortie",
    "out; actual; got; returned; yield; rendu; result; produced"),
  field("recovery", "Recovery", "share",
    "recovery; recovery rate; percent recovery; pct recovery; percent recovered; pct recovered; yield percent; recuperation; taux recuperation; rendement",
    "yield; rec; rate; efficiency; recovered", ["outturn", "fineWeight"]),
  field("status", "Status", "text",
    "status; state; stage; progress; where it is; etat; statut; etape; avancement", "done; settled; open; closed; where; regle; paid y n"),
];

const byId = new Map(fields.map((one) => [one.id, one]));

export function fieldOf(id: FieldId): Field {
  const found = byId.get(id);
  if (!found) throw new Error(`Cannot find the field ${id}`);
  return found;
}

/** Fields by which a lot is known, and weights without which there is no lot: a list has some of each. */
export const IDENTITY: ReadonlySet<FieldId> = new Set(["lot", "date", "client", "description"]);
export const WEIGHTS: ReadonlySet<FieldId> = new Set(["gross", "net", "fineWeight", "outturn"]);
