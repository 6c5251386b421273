import { forget, notRun } from "./outside-tools";

export const setup = forget;

export function teardown(): void {
  const list = notRun();
  if (list) console.log(list);
}
