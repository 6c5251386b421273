import type { Command } from "./command";
import { evaluate } from "./eval";
import { explain } from "./explain";
import { functions } from "./functions";
import { journal } from "./journal";
import { month } from "./month";
import { native } from "./native";
import { recalc } from "./recalc";
import { reconcile } from "./reconcile";
import { share } from "./share";
import { unshare } from "./unshare";

/** By name, in the order in which the help lists them. */
export const commands: ReadonlyMap<string, Command> = new Map(Object.entries({ eval: evaluate, explain, native, functions, recalc, share, unshare, reconcile, journal, month }));
