import type { Task } from "../page";

export const closeAMonth: Task = {
  title: "Close a month",
  about: "Metal in, metal out, metal still here, and whether the gap is more than scales and assays can explain.",
  load: async () => {
    const { monthPage } = await import("./page");
    return (stage, leave) => stage.show(monthPage(stage.host, leave));
  },
};
