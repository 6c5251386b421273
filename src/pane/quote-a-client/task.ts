import type { Task } from "../page";

export const quoteAClient: Task = {
  title: "Quote a client",
  about: "What a lot is likely to pay, and the range that it can fall in, as a sheet of one page.",
  load: async () => {
    const { quotePage } = await import("./page");
    return (stage, leave) => stage.show(quotePage(stage.host, leave));
  },
};
