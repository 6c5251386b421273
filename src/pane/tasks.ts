import { allFunctions } from "./all-functions/task";
import { closeAMonth } from "./close-a-month/task";
import { explainACell } from "./explain-a-cell/task";
import { firstLot } from "./first-lot/task";
import type { FrontTasks } from "./front-page";
import { theJournal } from "./journal/task";
import { theLicences } from "./licences/task";
import type { Task } from "./page";
import { quoteAClient } from "./quote-a-client/task";
import { reconcileLots } from "./reconcile/task";
import { repairFormulas } from "./repair/task";
import { setUpALot } from "./set-up-a-lot/task";
import { settleALot } from "./settle-a-lot/task";
import { shareACopy } from "./share-a-copy/task";
import { theShop } from "./shop/task";

/** In the order in which the front page lists them. */
export const tasks: readonly Task[] = [setUpALot, quoteAClient, settleALot, closeAMonth, reconcileLots, theJournal, shareACopy, theShop, explainACell, repairFormulas, allFunctions];

export const frontTasks: FrontTasks = { tasks, first: firstLot, foot: [theLicences] };
