import type { Task } from "../page";

export const theShop: Task = {
  title: "The shop",
  about: "Say once how your shop works: terms, acid, pails, copper, cell, scales, and what stands on its papers.",
  load: async () => {
    const { shopPage } = await import("./page");
    return (stage, leave) => stage.show(shopPage(stage.host, leave));
  },
};
