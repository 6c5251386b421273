import type { Task } from "../page";

export const repairFormulas: Task = {
  title: "Repair",
  about: "Cells that show #NAME?, #VALUE! or what another program left in their formulas: what it means, and what mends it.",
  load: async () => {
    const { repairPage } = await import("./page");
    return (stage, leave) => stage.show(repairPage(stage.host, leave));
  },
};
