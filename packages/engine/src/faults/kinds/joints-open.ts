/** Connections that do not conduct, or conduct badly: conductor, crimp, mated contact, splice and ring ends. */
import type { Branch } from "../../circuit/index.js";
import { endName } from "../../loom/index.js";
import { opened, poor } from "../patterns.js";
import { CHANCE, COMES_AND_GOES, connectorHands, contactHands, jointHands, wireHands } from "../rates.js";
import type { Fault, FaultContext, FaultKind } from "../types.js";
import { contactWords, partWords, placeOf, wirePath, wireWords } from "../words.js";

interface Described {
	readonly chance: number;
	readonly where: string;
	readonly place: string;
	readonly path: readonly string[];
	readonly mend: string;
}

function describe(context: FaultContext, branch: Branch): Described | undefined {
	const { loom } = context;
	const { what, id, element } = branch.owner;
	switch (what) {
		case "wire":
			return {
				chance: CHANCE.wire * wireHands(context, id),
				where: wireWords(loom, id),
				place: loom.wires.get(id)?.bundle ?? "",
				path: wirePath(loom, id),
				mend: `find the break in ${id} by halving, and put in a new length of the same size`,
			};
		case "crimp":
			return {
				chance: CHANCE.crimp * contactHands(context, id, "made"),
				where: `crimp of ${element} at ${contactWords(loom, id)}`,
				place: placeOf(loom, id),
				path: [id, element],
				mend: `pull-test ${element} at ${id}; crimp a new terminal if it moves`,
			};
		case "mated contact":
			return {
				chance: CHANCE.mated * contactHands(context, id, "inserted"),
				where: `terminal of ${contactWords(loom, id)}: pushed back, spread or dirty`,
				place: placeOf(loom, id),
				path: [id],
				mend: `unplug, see that the terminal of ${id} is latched and grips a test pin, and plug in again`,
			};
		case "joint": {
			const kind = loom.joints.get(id)?.kind === "ground" ? "ring terminal" : "joint";
			return {
				chance: CHANCE.joint * jointHands(context, id, element),
				where: `${kind} of ${element} at ${partWords(loom, id)}`,
				place: placeOf(loom, id),
				path: [element, id],
				mend: `pull-test ${element} at ${id} and make the joint anew if it moves`,
			};
		}
		case "metal":
			return {
				chance: CHANCE.groundBolt * connectorHands(context, id) * (context.touched.joints.has(id) ? 20 : 1),
				where: `bolt of ground point ${partWords(loom, id)}: loose or on paint`,
				place: placeOf(loom, id),
				path: [id],
				mend: `clean ${id} to bright metal and tighten it as the maker says`,
			};
		case "device":
			return undefined;
	}
}

function list(
	context: FaultContext,
	kind: string,
	share: number,
	ways: (branch: number) => Fault["patterns"],
): Fault[] {
	const faults: Fault[] = [];
	context.circuit.branches.forEach((branch, k) => {
		const { what, id, element } = branch.owner;
		const known = describe(context, branch);
		if (known === undefined || !present(context, branch)) return;
		faults.push({
			id: `${kind}:${what}:${id}${what === "crimp" || what === "joint" ? `:${element}` : ""}`,
			kind,
			where: known.where,
			place: known.place,
			prior: known.chance * share,
			patterns: ways(k),
			shakenBy: "",
			comesAndGoes: COMES_AND_GOES.joint,
			inParts: [],
			path: known.path,
			mend: known.mend,
		});
	});
	return faults;
}

/** Branches that stand in the pattern only for a step left out are not on the car. */
function present({ loom }: FaultContext, branch: Branch): boolean {
	const { what, id, element } = branch.owner;
	if (what === "wire") return loom.wires.has(id);
	if (what === "mated contact") return loom.contacts.has(id);
	if (what === "metal") return loom.joints.has(id);
	// The wire must end there in this loom, not only in that of a step left out.
	const wire = loom.wires.get(element);
	return wire !== undefined && [wire.from, wire.to].some((end) => endName(end) === id);
}

const SOURCE = "MIL-HDBK-217F Notice 2 section 17.1 for the ratios; reference/diagnosis/failure-rates.json";

export const open: FaultKind = {
	kind: "open",
	title: "Open connection",
	source: SOURCE,
	list: (context) => list(context, "open", 0.6, (branch) => [{ weight: 1, change: opened(branch) }]),
};

export const addedResistance: FaultKind = {
	kind: "added resistance",
	title: "Poor connection",
	source: SOURCE,
	list: (context) => list(context, "added resistance", 0.4, poor),
};
