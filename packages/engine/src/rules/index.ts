/** The rules. A new rule is one new file and one line here. */
import type { Circuit } from "../circuit/index.js";
import { backFeed } from "./back-feed.js";
import { brakeLamps } from "./brake-lamps.js";
import { busEnds } from "./bus-ends.js";
import { charging } from "./charging.js";
import { cutEnd } from "./cut-end.js";
import { cutOffLoad } from "./cut-off-load.js";
import { deadEndWire } from "./dead-end-wire.js";
import { driverOverLimit } from "./driver-over-limit.js";
import { fuseTooLarge } from "./fuse-too-large.js";
import { idleFuse } from "./idle-fuse.js";
import { noJoints } from "./no-joints.js";
import { reversingLamps } from "./reversing-lamps.js";
import { sensorReturn } from "./sensor-return.js";
import { sensorReturnLoad } from "./sensor-return-load.js";
import { sensorSupply } from "./sensor-supply.js";
import { startInterlock } from "./start-interlock.js";
import { switchInput } from "./switch-input.js";
import { twistedPair } from "./twisted-pair.js";
import type { Finding, Rule, Severity } from "./types.js";
import { unfusedFeed } from "./unfused-feed.js";
import { unitPower } from "./unit-power.js";
import { unsettled } from "./unsettled.js";
import { unwiredPin } from "./unwired-pin.js";
import { voltageDrop } from "./voltage-drop.js";

export const rules: readonly Rule[] = [
	startInterlock,
	unfusedFeed,
	fuseTooLarge,
	cutEnd,
	noJoints,
	unitPower,
	sensorReturn,
	sensorSupply,
	busEnds,
	unsettled,
	brakeLamps,
	reversingLamps,
	backFeed,
	charging,
	cutOffLoad,
	unwiredPin,
	deadEndWire,
	switchInput,
	voltageDrop,
	sensorReturnLoad,
	driverOverLimit,
	twistedPair,
	idleFuse,
];

const ORDER: Readonly<Record<Severity, number>> = { stop: 0, warn: 1, note: 2 };

/** Every finding of every rule: the gravest first, then in the order of the rules. */
export function runRules(circuit: Circuit): Finding[] {
	return rules.flatMap((rule) => rule.check(circuit)).sort((x, y) => ORDER[x.severity] - ORDER[y.severity]);
}

export type { Finding, Rule, Severity } from "./types.js";
