import type { Task } from "../page";

export const theJournal: Task = {
  title: "Journal",
  about: "A month’s settlements as balanced lines for the books, to the cent.",
  load: async () => {
    const { journalPage } = await import("./page");
    return (stage, leave) => stage.show(journalPage(stage.host, leave));
  },
};
