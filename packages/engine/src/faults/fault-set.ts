/** The faults a loom can have. A new kind is one new file in kinds/ and one entry here. */
import { forbiddenMend, forbiddenWork } from "../readings/index.js";
import { bundleShort } from "./kinds/bundle-short.js";
import { notLocked, notSeated } from "./kinds/common-cause.js";
import { deviceDead, fuseBlown, unitDead, unitPinDead } from "./kinds/devices.js";
import { groundShared } from "./kinds/ground-shared.js";
import { addedResistance, open } from "./kinds/joints-open.js";
import { bridged, swapped } from "./kinds/neighbours.js";
import { shortToGround, shortToSupply } from "./kinds/shorts.js";
import { stepLeftOut } from "./kinds/step-left-out.js";
import { stepMisplaced } from "./kinds/step-misplaced.js";
import { wrongCavity } from "./kinds/wrong-cavity.js";
import { wrongRelay } from "./kinds/wrong-relay.js";
import { wrongValue } from "./kinds/wrong-value.js";
import type { Fault, FaultContext, FaultKind } from "./types.js";

export const faultKinds: readonly FaultKind[] = [
	open,
	addedResistance,
	shortToGround,
	shortToSupply,
	bridged,
	swapped,
	fuseBlown,
	deviceDead,
	unitPinDead,
	unitDead,
	notLocked,
	notSeated,
	stepLeftOut,
	stepMisplaced,
	wrongCavity,
	wrongRelay,
	wrongValue,
	groundShared,
	bundleShort,
];

/** Every fault of a loom, in the order of the kinds. On restraint and high-voltage circuits no mend is given. */
export function faultSet(context: FaultContext): Fault[] {
	return faultKinds
		.flatMap((kind) => kind.list(context))
		.map((fault) => {
			const mark = forbiddenWork(context.loom, fault.path);
			return mark ? { ...fault, mend: forbiddenMend(mark) } : fault;
		});
}
