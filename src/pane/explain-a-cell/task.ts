import type { Task } from "../page";

export const explainACell: Task = {
  title: "Explain a cell",
  about: "See how the number in a cell comes about, step by step, and go to what it is made of.",
  load: async () => {
    const { explainPage } = await import("./page");
    return (stage, leave) => stage.show(explainPage(stage.host, leave));
  },
};
