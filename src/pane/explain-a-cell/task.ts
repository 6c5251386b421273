import type { Task } from "../page";
import { explainPage } from "./page";

export const explainACell: Task = {
  title: "Explain a cell",
  about: "See how the number in a cell comes about, step by step, and go to what it is made of.",
  open: (stage, leave) => stage.show(explainPage(stage.host, leave)),
};
