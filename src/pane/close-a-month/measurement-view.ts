import type { Measurement } from "../../month/month-input";
import { type KnownMeasurement, readPerThousand, readShare } from "../../month/shop-measurement";
import { readArgument } from "../argument";
import { h } from "../dom";
import { measuredField, textField } from "../form-field";
import { type Notation, writtenNumber } from "../notation";
import { massChoices } from "../unit-choices";
import type { MeasurementDraft } from "./memory";

export interface MeasurementView {
  readonly element: HTMLElement;
  /** Null while something is missing or wrong; the fields say what. */
  read(): Measurement | null;
}

/** How well the shop measures: what the workbook keeps of it, and what is asked. */
export function measurementView(draft: MeasurementDraft, isKnown: boolean, notation: Notation, changed: () => void): MeasurementView {
  const example = (text: string): string => text.replace(".", notation.decimal);
  const keep = (): void => {
    Object.assign(draft, { scale: scale.text(), unit: scale.unit(), assay: assay.text(), bias: bias.text(), weighInBias: weighInBias.text() });
    changed();
  };
  const scale = measuredField({ label: "Scale, one weighing", about: "Its standard uncertainty: how far repeated weighings of one thing lie apart.", value: draft.scale, units: massChoices, unit: draft.unit }, keep);
  const assay = textField({ label: "Assay, in ‰", about: "The standard uncertainty of one assay.", value: draft.assay }, keep);
  const bias = textField({ label: "Bias of the scale", about: `What it has in all of its weighings alike, as a share: ${example("0.05%")}. Write 0 where none is known.`, value: draft.bias }, keep);
  const weighInBias = textField({ label: "Bias at weigh-in", optional: "empty when one scale weighs all", about: "Of the scale on which lots are weighed in, where it is not the one that weighs the rest.", value: draft.weighInBias }, keep);

  return {
    element: h("details", { class: "lw-measuring", open: !isKnown }, h("summary", {}, "How well the shop measures"), h("div", { class: "lw-fields" }, scale.element, assay.element, bias.element, weighInBias.element)),
    read() {
      const number = readArgument(scale.text(), notation);
      const value = number.kind === "value" && typeof number.value === "number" && number.value >= 0 ? number.value : null;
      scale.say(value === null ? needs(scale.text(), example("Write a weight such as 0.5")) : null, scale.text() !== "");
      const thousand = told(assay.text(), notation, readPerThousand);
      assay.say(thousand === null ? needs(assay.text(), "Write parts per thousand, such as 1") : null, assay.text() !== "");
      const share = told(bias.text(), notation, readShare);
      bias.say(share === null ? needs(bias.text(), example("Write a share such as 0.05%")) : null, bias.text() !== "");
      const other = weighInBias.text() === "" ? null : told(weighInBias.text(), notation, readShare);
      const isWrong = weighInBias.text() !== "" && other === null;
      weighInBias.say(isWrong ? example("Write a share such as 0.3%") : null);
      if (value === null || thousand === null || share === null || isWrong) return null;
      return { scale: { value, unit: scale.unit() }, assay: thousand, bias: share, weighInBias: other };
    },
  };
}

const needs = (typed: string, sentence: string): string => (typed === "" ? "Still needed" : sentence);

function told(text: string, notation: Notation, read: (written: number | string) => number | null): number | null {
  const argument = readArgument(text, notation);
  return argument.kind === "value" ? read(argument.value) : null;
}

export function measurementDraft({ scale, assay, bias }: KnownMeasurement, notation: Notation): MeasurementDraft {
  const written = (value: number | undefined): string => (value === undefined ? "" : writtenNumber(value, notation));
  return { scale: written(scale?.value), unit: scale?.unit ?? "g", assay: written(assay), bias: written(bias), weighInBias: "" };
}
