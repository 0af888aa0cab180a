/** The faults a loom can have, and how likely each is. */
export { faultKinds, faultSet } from "./fault-set.js";
export { type FaultyCar, faultsOf } from "./of-car.js";
export {
	type KindRate,
	NO_RECORD,
	type PersonRate,
	type Repair,
	ratesFrom,
	type ShopRates,
	type ShopRecord,
	stepsOf,
	withRates,
} from "./shop-rates.js";
export type { Fault, FaultContext, FaultKind, Pattern } from "./types.js";
export { contactWords, holderOf, partWords, placeOf, wireWords } from "./words.js";
