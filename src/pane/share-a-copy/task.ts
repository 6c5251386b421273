import type { Task } from "../page";

export const shareACopy: Task = {
  title: "Share a copy",
  about: "For a bookkeeper without the add-in: ordinary formulas in the place of ours, and back again.",
  load: async () => {
    const { shareView } = await import("./page");
    return (stage, leave) => stage.show(shareView(stage.host, leave));
  },
};
