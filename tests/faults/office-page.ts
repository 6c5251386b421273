/** Runs in the browser, in Excel's page: the tasks beside the stub of Excel. */
import { officePort } from "../../src/workbook/office";
import { type Faults, trial } from "./trial";

const says = /GeneralException|Excel broke off a change and did not take it back: look at /;
const hasFailed = (): boolean => window.stub.hasFailed;
const faults: readonly Faults[] = [
  { what: "changes in Excel", failAt: (n) => window.stub.failAt(n), hasFailed, says, every: 37 },
  { what: "changes in Excel and their taking back", failAt: (n) => window.stub.failAt(n, 2), hasFailed, says, every: 41, isOfWriting: true },
  { what: "requests to Excel", failAt: (n) => window.stub.failAtRequest(n), hasFailed, says },
];
/** The stub numbers its pictures and charts as it makes them, and lists them by their numbers. */
function state(): string {
  const { properties, ...rest } = window.stub.state() as { properties: unknown[] };
  const unnumbered = (of: unknown): string => JSON.stringify(of).replace(/(?<=(?:shape|chart):[^"|]*\|)\d+/g, "n");
  return unnumbered(rest) + properties.map(unnumbered).sort().join();
}

const root = document.createElement("div");
document.body.append(root);
void Office.onReady().then(() => {
  window.trial = trial(root, { port: officePort(), state, faults });
});
