import { shopFault } from "../../lots/check-shop";
import { type ShopField, isNumber } from "../../lots/shop-fields";
import type { ShopValue } from "../../lots/shop";
import { addressOn, isOneCell } from "../../workbook/cell-range";
import { readArea } from "../../workbook/xlsx/address";
import { readArgument } from "../argument";
import { type Notation, writtenNumber } from "../notation";
import type { Typed } from "./memory";
import { inSignsOf } from "./signs";

export interface Wrong {
  readonly fault: string;
}

/** What was typed means, or why it will not do; null where nothing was. */
export function readField(field: ShopField, { text, unit }: Typed, notation: Notation): ShopValue | Wrong | null {
  if (text === "") return null;
  if (!isNumber(field.kind)) return checked(field, { value: text }, notation);
  const told = asTold(field, text, notation);
  if ("fault" in told) return told;
  if (unit === "") return { fault: `Choose the unit of ${field.title.toLowerCase()}` };
  return checked(field, { ...told, ...(unit === undefined ? {} : { unit }) }, notation);
}

function checked(field: ShopField, told: ShopValue, notation: Notation): ShopValue | Wrong {
  const fault = shopFault(field, told);
  return fault === null ? told : { fault: isNumber(field.kind) ? inSignsOf(fault, notation) : fault };
}

function asTold({ title }: ShopField, text: string, notation: Notation): ShopValue | Wrong {
  const argument = readArgument(text, notation);
  switch (argument.kind) {
    case "value":
      return { value: argument.value };
    case "cells": {
      const { sheet, written } = argument.range;
      if (!isOneCell(argument.range)) return { fault: `Cannot use ${written} for ${title.toLowerCase()}: name one cell` };
      if (sheet === null) return { fault: `Say on which sheet ${written} stands, as in Prices!${written}` };
      return { sheet, cell: written.replaceAll("$", "") };
    }
    case "unreadable":
      return { fault: argument.sentence };
    default:
      return { fault: `Cannot use ${text} for ${title.toLowerCase()}: write a number, or name a cell such as Prices!B5` };
  }
}

/** As it stands in its field again. */
export function typedOf({ kind }: ShopField, told: ShopValue | undefined, notation: Notation): Typed {
  if (!told) return { text: "" };
  const unit = told.unit === undefined ? {} : { unit: told.unit };
  if ("cell" in told) {
    const area = readArea(told.cell);
    return { text: area ? addressOn(told.sheet, area, null) : "", ...unit };
  }
  if (typeof told.value === "number") return { text: writtenNumber(told.value, notation), ...unit };
  return { text: isNumber(kind) ? inSignsOf(told.value, notation) : told.value, ...unit };
}
