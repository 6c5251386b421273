import { officePort } from "../../src/workbook/office";
import type { Place, WorkbookPort } from "../../src/workbook/port";

declare global {
  interface Window {
    port: WorkbookPort;
    /** Places that the port told of, and the way to stop it. */
    told: Place[];
    follow: () => () => void;
  }
}

window.port = officePort();
window.told = [];
window.follow = () => window.port.onSelection((place) => window.told.push(place));
