import type { Task } from "../page";

export const theLicences: Task = {
  title: "Licences",
  about: "What comes with Lotwright, and under whose licence.",
  load: async () => {
    const [{ licencesPage }, { bundledLicences }] = await Promise.all([import("./page"), import("./bundled-licences")]);
    const licences = await bundledLicences();
    return (stage, leave) => stage.show(licencesPage(licences, leave));
  },
};
