import type { Task } from "../page";

export const reconcileLots: Task = {
  title: "Reconcile",
  about: "Lots whose rows contradict themselves: each with its cell, the reason, and a way to it.",
  load: async () => {
    const { reconcilePage } = await import("./page");
    return (stage, leave) => stage.show(reconcilePage(stage.host, leave));
  },
};
