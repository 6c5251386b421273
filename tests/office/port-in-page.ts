import { officePort } from "../../src/workbook/office";
import type { BookPort, Place, Undo } from "../../src/workbook/port";

declare global {
  interface Window {
    port: BookPort;
    /** What the writes gave back, for a test outside the page to ask for. */
    undos: Undo[];
    /** Places that the port told of, and the way to stop it. */
    told: Place[];
    follow: () => () => void;
  }
}

window.port = officePort();
window.undos = [];
window.told = [];
window.follow = () => window.port.onSelection((place) => window.told.push(place));
