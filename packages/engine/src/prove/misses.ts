/** Why a fault is not caught before power. */
import { branchAmps, type Change, type Circuit, CircuitError, operate } from "../circuit/index.js";
import type { Fault } from "../faults/index.js";
import { forbidden } from "../readings/index.js";
import type { DeadNet } from "./dead-net.js";
import type { MissReason } from "./types.js";

/** Ohms between two points below which a strand or a chafe across them changes next to nothing. */
const JOINED_OHMS = 2;
/** Amperes from which on something counts as carrying current when the car is live. */
const CARRIES = 1e-4;

const NEVER: ReadonlySet<string> = new Set(["pyrotechnic", "high voltage"]);

export const WHY: Readonly<Record<MissReason, string>> = {
	"restraint or high-voltage circuit":
		"It lies in a restraint or high-voltage circuit, which is never measured here: the maker's procedure alone.",
	"only shows under power":
		"With the battery off no current can be sent through it: the staged power-up and the codes must show it.",
	"nothing to measure behind it": "It leads to nothing that carries current: a stowed, spare or dead end.",
	"joins what is joined already": "It joins two points that a few ohms or less join in the sound car too.",
	"no reading leaves its band":
		"It moves every reading less than the tolerance of the parts and the meter's limit: a second path carries it, or what lies behind has far more ohms.",
};

/** What is known of a fault that is not caught. */
export interface Lost {
	readonly fault: Fault;
	/** In the whole circuit, and in the condensed one. */
	readonly change: Change;
	readonly condensed: Change;
	/** Does it alter the dead network in any offered condition? */
	readonly acts: boolean;
	/** Of a single conductor: is it caught when it is open? */
	readonly openCaught: boolean;
}

export class Misses {
	#most: Float64Array | undefined;

	/** @param plugged the dead network with everything plugged in */
	constructor(
		readonly circuit: Circuit,
		readonly plugged: DeadNet,
	) {}

	reason({ fault, change, condensed, acts, openCaught }: Lost): MissReason {
		if (fault.path.some((id) => this.#never(id))) return "restraint or high-voltage circuit";
		if (!acts) return "only shows under power";
		const [branch, ...more] = condensed.branches;
		const [link, ...others] = condensed.added;
		if (
			branch &&
			more.length + condensed.added.length === 0 &&
			!openCaught &&
			this.plugged.cutsOff(branch.branch)
		)
			return change.branches.some((one) => this.#mostAmps(one.branch) > CARRIES)
				? "only shows under power"
				: "nothing to measure behind it";
		if (
			link &&
			others.length + condensed.branches.length === 0 &&
			this.plugged.sound(link).value < JOINED_OHMS
		)
			return "joins what is joined already";
		return "no reading leaves its band";
	}

	#never(id: string): boolean {
		const { wires, parts, joints } = this.circuit.loom;
		const marks = [wires, parts, joints].flatMap((table) => table.get(id)?.marks ?? []);
		return marks.some((mark) => NEVER.has(mark)) || forbidden(this.circuit.loom, id) !== undefined;
	}

	/** Most amperes of a branch in any listed condition. */
	#mostAmps(branch: number): number {
		this.#most ??= mostAmps(this.circuit);
		return this.#most[branch]!;
	}
}

function mostAmps(circuit: Circuit): Float64Array {
	const most = new Float64Array(circuit.branches.length);
	for (const condition of circuit.loom.conditions.keys())
		try {
			const point = operate(circuit, circuit.standing(condition));
			for (let k = 0; k < most.length; k++) most[k] = Math.max(most[k]!, Math.abs(branchAmps(point, k)));
		} catch (error) {
			// A condition that does not settle has no currents to tell of.
			if (!(error instanceof CircuitError)) throw error;
		}
	return most;
}
