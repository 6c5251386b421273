import { BarController, BarElement, Chart, Tooltip, _adapters, registerables } from "chart.js";

/** The grid looks for the chart library where a script tag would have put it, with what it builds its own kinds of chart from. */
Chart.register(...registerables);
Object.assign(Chart, { BarController, BarElement, Tooltip, _adapters });
Object.assign(globalThis, { Chart });
