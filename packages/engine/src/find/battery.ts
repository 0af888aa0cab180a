/** Which readings may be taken while the battery must stay off. */
import type { Question } from "../readings/index.js";
import type { Evidence } from "./types.js";

/** Ohms are read with the battery off; all else needs it on. */
export const mayBeTaken = ({ battery }: Evidence, { what }: Question): boolean =>
	battery !== "off" || what === "ohms";
