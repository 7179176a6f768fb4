import { type Note, note } from "../notes.js";
import { massText, riseText, temperatureText } from "../units/figure-text.js";
import { liftOf } from "./weights.js";
import { decimals, type Poured } from "./words.js";

/**
 * What can hurt a person in this pour. Burns: Burns 8 (1982), DGUV/IFA 3148 (2018). Dust: the safety data sheet. Glass shock: common practice.
 */
export function cautions({ pour, job }: Poured): Note[] {
  const { rise, ceiling } = pour.heat;
  const mass = (kg: number): string => (job.units === "in" ? massText(kg, "in") : `${decimals(kg, 1)} kg`);
  const { powder, water } = pour.batches[0]!;
  // A bucket is held close.
  const bucket = liftOf(0, powder + water);
  const notes = [
    note(
      "caution",
      "setting-heat",
      `Never put a hand or any part of the body into setting plaster: this mix can rise by ${riseText(rise, job.units)} to ${temperatureText(ceiling, job.units)}, and it grips before it feels warm.`,
    ),
    note(
      "caution",
      "powder-dust",
      "Weigh and pour powder without clouds and wear a well-fitting dust mask: plaster dust can hold silica; the maker's safety data sheet comes first.",
    ),
    note(
      "caution",
      "drain",
      "Let no plaster and no wash water go down a drain, where it sets: let it settle, bin the solid.",
    ),
    note(
      "caution",
      "hot-plaster-on-glass",
      "Hot plaster warms the glass: pour at room temperature on glass at room temperature, let both cool by themselves and never rinse warm glass cold, or it may crack.",
    ),
  ];
  if (bucket.people > 1) {
    notes.push(
      note(
        "caution",
        "heavy-bucket",
        `${pour.batches.length === 1 ? "The mix" : "Each mix"} weighs ${mass(powder + water)} without its container, more than the ${mass(bucket.guideline)} one person should lift (NIOSH): pour it with ${bucket.people} people, ladle it in, or mix in several smaller containers at once.`,
      ),
    );
  }
  if (pour.lift.people > 1) {
    notes.push(
      note(
        "caution",
        "heavy",
        `The wet tool weighs ${mass(pour.mass.wet)}, more than the ${mass(pour.lift.guideline)} one person should lift at this reach (NIOSH): lift it with ${pour.lift.people} people or a hoist.`,
      ),
    );
  }
  if (job.plaster.kind === "custom") {
    notes.push(
      note(
        "caution",
        "custom-heat",
        "Heat and times of a custom plaster are taken from common ones: the maker's data sheet comes first.",
      ),
    );
  }
  return notes;
}
