/** The rules. A new rule is one new file and one line here. */
import type { Circuit } from "../circuit/index.js";
import { backFeed } from "./back-feed.js";
import { brakeLamps } from "./brake-lamps.js";
import { busEnds } from "./bus-ends.js";
import { chafedSupply } from "./chafed-supply.js";
import { charging } from "./charging.js";
import { codeSet } from "./code-set.js";
import { crowdedSplices } from "./crowded-splices.js";
import { cutEnd } from "./cut-end.js";
import { cutOffLoad } from "./cut-off-load.js";
import { deadEndWire } from "./dead-end-wire.js";
import { directOutput } from "./direct-output.js";
import { driverOverLimit } from "./driver-over-limit.js";
import { feedConfused } from "./feed-confused.js";
import { floatingInput } from "./floating-input.js";
import { functionLost } from "./function-lost.js";
import { fuseOverloaded } from "./fuse-overloaded.js";
import { fuseTooLarge } from "./fuse-too-large.js";
import { groundMetal } from "./ground-metal.js";
import { hotWire } from "./hot-wire.js";
import { idleFuse } from "./idle-fuse.js";
import { loadGained } from "./load-gained.js";
import { loadLost } from "./load-lost.js";
import { mixedGround } from "./mixed-ground.js";
import { needsRemovedPart } from "./needs-removed-part.js";
import { noJoints } from "./no-joints.js";
import { parkedDraw } from "./parked-draw.js";
import { restraintsTouched } from "./restraints-touched.js";
import { reversingLamps } from "./reversing-lamps.js";
import { sensorReturn } from "./sensor-return.js";
import { sensorReturnLoad } from "./sensor-return-load.js";
import { sensorSupply } from "./sensor-supply.js";
import { sneakPath } from "./sneak-path.js";
import { spliceNearConnector } from "./splice-near-connector.js";
import { startInterlock } from "./start-interlock.js";
import { switchInput } from "./switch-input.js";
import { terminalSize } from "./terminal-size.js";
import { twinSensors } from "./twin-sensors.js";
import { twistedPair } from "./twisted-pair.js";
import { twoInACavity } from "./two-in-a-cavity.js";
import { twoSupplies } from "./two-supplies.js";
import type { Finding, Rule, Severity } from "./types.js";
import { unfusedFeed } from "./unfused-feed.js";
import { unitPower } from "./unit-power.js";
import { unsettled } from "./unsettled.js";
import { unwiredPin } from "./unwired-pin.js";
import { voltageDrop } from "./voltage-drop.js";
import { weakInput } from "./weak-input.js";
import { wetSeal } from "./wet-seal.js";

export const rules: readonly Rule[] = [
	startInterlock,
	restraintsTouched,
	directOutput,
	twoSupplies,
	fuseOverloaded,
	unfusedFeed,
	fuseTooLarge,
	hotWire,
	cutEnd,
	noJoints,
	unitPower,
	feedConfused,
	needsRemovedPart,
	sensorReturn,
	sensorSupply,
	busEnds,
	unsettled,
	functionLost,
	brakeLamps,
	reversingLamps,
	backFeed,
	sneakPath,
	charging,
	loadLost,
	loadGained,
	cutOffLoad,
	unwiredPin,
	deadEndWire,
	floatingInput,
	codeSet,
	switchInput,
	weakInput,
	voltageDrop,
	mixedGround,
	groundMetal,
	sensorReturnLoad,
	twinSensors,
	driverOverLimit,
	parkedDraw,
	twistedPair,
	twoInACavity,
	terminalSize,
	wetSeal,
	spliceNearConnector,
	crowdedSplices,
	chafedSupply,
	idleFuse,
];

const ORDER: Readonly<Record<Severity, number>> = { stop: 0, warn: 1, note: 2 };

/**
 * Every finding of every rule: the gravest first, then in the order of the rules.
 * @param before the loom as delivered, where `circuit` is it converted: without it rules that compare the two are silent
 */
export function runRules(circuit: Circuit, before?: Circuit): Finding[] {
	return rules
		.flatMap((rule) => rule.check(circuit, before))
		.sort((x, y) => ORDER[x.severity] - ORDER[y.severity]);
}

export { type Covering, type Grounded, groundsOf, matchAcceptances } from "./acceptance.js";
export type { Finding, Rule, Severity } from "./types.js";
