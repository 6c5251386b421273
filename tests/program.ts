import programs from "../shared/checks/programs.json";

/** What the reference page says of a check against a program. The check takes from here which functions it must hold. */
export function program(id: string): (typeof programs)[number] {
  const found = programs.find((one) => one.id === id);
  if (!found) throw new Error(`shared/checks/programs.json says nothing of ${id}`);
  return found;
}
