/** Meter readings with their bands. */
export { conditionWords } from "./condition-words.js";
export { forbidden, forbiddenMend, forbiddenWork } from "./forbidden.js";
export { type Meter, meterError, WORKSHOP_METER } from "./meter.js";
export {
	type Ground,
	ownerText,
	pointOf,
	type Question,
	type Reading,
	ReadingError,
	takeReading,
	type What,
} from "./reading.js";
export { type Contribution, deviationOf, type Sensitivity, sensitivity } from "./sensitivity.js";
