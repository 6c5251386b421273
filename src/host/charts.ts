import { Chart, registerables } from "chart.js";

/** The grid looks for the chart library where a script tag would have put it. */
Chart.register(...registerables);
Object.assign(globalThis, { Chart });
