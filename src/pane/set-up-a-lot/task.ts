import type { Task } from "../page";

export const setUpALot: Task = {
  title: "Set up a lot",
  about: "Weigh a lot in: the row in your own list, with its formulas, and what the work on it will take.",
  load: async () => {
    const { setUpPage } = await import("./page");
    return (stage, leave) => stage.show(setUpPage(stage.host, leave));
  },
};
