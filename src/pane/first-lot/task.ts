import type { Task } from "../page";

export const firstLot: Task = {
  title: "A first lot",
  about: "Weight, fineness and price in; fine weight and worth out, as live formulas in your sheet.",
  load: async () => {
    const { firstLotPage } = await import("./page");
    return (stage, leave) => stage.show(firstLotPage(stage.host, leave));
  },
};
