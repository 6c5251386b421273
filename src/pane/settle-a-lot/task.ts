import type { Task } from "../page";

export const settleALot: Task = {
  title: "Settle a lot",
  about: "From the assays and the outturn to the client’s statement, with where the silver went.",
  load: async () => {
    const { settlePage } = await import("./page");
    return (stage, leave) => stage.show(settlePage(stage.host, leave));
  },
};
