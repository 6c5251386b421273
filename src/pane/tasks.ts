import { allFunctions } from "./all-functions/task";
import { explainACell } from "./explain-a-cell/task";
import type { Task } from "./page";

/** In the order in which the front page lists them. */
export const tasks: readonly Task[] = [allFunctions, explainACell];
