/** What faults do to codes and functions, kept. */
export { EffectsError, effectsFromBytes, effectsToBytes } from "./bytes.js";
export { chanceOf, type Effects, effectsKey, gather } from "./effects.js";
