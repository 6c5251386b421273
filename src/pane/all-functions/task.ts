import type { Task } from "../page";

export const allFunctions: Task = {
  title: "All functions",
  about: "Find a formula of the trade, fill it in with the result beside it, and put it into a cell.",
  load: async () => (await import("./open")).openFunctions,
};
