/** Faults that no reading before power catches, each with why. */
import { branchAmps, type Change, type Circuit, CircuitError, operate } from "../circuit/index.js";
import type { Fault } from "../faults/index.js";
import { DeadNet } from "./dead-net.js";
import type { SheetQuestion } from "./question.js";
import { neverMeasured } from "./restraints.js";
import type { Candidate, Miss, MissReason } from "./types.js";

/** Ohms between two points below which a strand or a chafe across them changes next to nothing. */
const JOINED_OHMS = 2;
/** Amperes from which on something counts as carrying current when the car is live. */
const CARRIES = 1e-4;
/** Ohms tried for poor connections that the sheet does not catch at the chosen size. */
const LADDER = [10, 100, 1000, 10_000] as const;

const WHY: Readonly<Record<MissReason, string>> = {
	"restraint or high-voltage circuit":
		"It lies in a restraint or high-voltage circuit, which is never measured here: the maker's procedure alone.",
	"only shows under power":
		"With the battery off no current can be sent through it: the staged power-up and the codes must show it.",
	"nothing to measure behind it": "It leads to nothing that carries current: a stowed, spare or dead end.",
	"joins what is joined already": "It joins two points that a few ohms or less join in the sound car too.",
	"no reading leaves its band":
		"It moves every reading less than the tolerance of the parts and the meter's limit: a second path carries it, or what lies behind has far more ohms.",
};

/**
 * Every fault with a way that nothing catches.
 * @param rows the chosen readings, for the ohms from which on they catch a poor connection after all
 */
export function missesOf(asked: SheetQuestion, rows: readonly Candidate[]): Miss[] {
	const { circuit, net, faults, ways, changes, changeOf, caughtBy, acts } = asked;
	const uncaught = (w: number) => caughtBy[changeOf[w]!]!.length === 0;
	const lost = new Map<number, number[]>();
	const caught = new Set<number>();
	ways.forEach(({ fault }, w) => {
		if (!uncaught(w)) caught.add(fault);
		else lost.set(fault, [...(lost.get(fault) ?? []), w]);
	});
	const openCaught = ({ branches: [one] }: Change): boolean => {
		const open = one && asked.numberOf({ branches: [{ branch: one.branch, siemens: 0 }], added: [] });
		return open !== undefined && caughtBy[open]!.length > 0;
	};
	const plugged = new DeadNet(net, asked.plugged.when);
	const amps = new MostAmps(circuit);
	const from = caughtFrom(
		asked,
		rows,
		[...lost.values()].flatMap((list) => list.map((w) => ways[w]!.change)).filter(openCaught),
	);
	const reasonOf = (fault: Fault, w: number): MissReason => {
		const { change } = ways[w]!;
		const number = changeOf[w]!;
		if (fault.path.some((id) => neverMeasured(circuit.loom, id))) return "restraint or high-voltage circuit";
		if (acts[number] === 0) return "only shows under power";
		const { branches, added } = changes[number]!;
		const [branch] = branches;
		const [link] = added;
		if (
			branch &&
			branches.length + added.length === 1 &&
			!openCaught(change) &&
			plugged.cutsOff(branch.branch)
		)
			return change.branches.some((one) => amps.of(one.branch) > CARRIES)
				? "only shows under power"
				: "nothing to measure behind it";
		if (link && branches.length + added.length === 1 && plugged.sound(link).value < JOINED_OHMS)
			return "joins what is joined already";
		return "no reading leaves its band";
	};
	return [...lost].map(([f, list]): Miss => {
		const fault = faults[f]!;
		const reason = reasonOf(fault, list[0]!);
		return {
			id: fault.id,
			kind: fault.kind,
			where: fault.where,
			reason,
			why: WHY[reason],
			only: caught.has(f) ? list.map((w) => ways[w]!.at) : [],
			caughtFrom: from.get(ways[list[0]!]!.change),
		};
	});
}

/** Most amperes of a branch in any listed condition, found when first asked for. */
class MostAmps {
	#most: Float64Array | undefined;
	constructor(readonly circuit: Circuit) {}

	of(branch: number): number {
		this.#most ??= this.#find();
		return this.#most[branch]!;
	}

	#find(): Float64Array {
		const { circuit } = this;
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
}

/** For poor connections: the ohms from which on some reading of the sheet catches them. */
function caughtFrom(
	asked: SheetQuestion,
	rows: readonly Candidate[],
	lost: readonly Change[],
): ReadonlyMap<Change, number> {
	const tried = lost.flatMap((change) => {
		const [one] = change.branches;
		if (!one || !("seriesOhms" in one)) return [];
		const { branch, seriesOhms } = one;
		return LADDER.filter((ohms) => ohms > seriesOhms).map((ohms) => ({
			change,
			ohms,
			more: { branches: [{ branch, seriesOhms: ohms }], added: [] },
		}));
	});
	const caughtBy = asked.ask(
		rows,
		tried.map(({ more }) => more),
	);
	const from = new Map<Change, number>();
	tried.forEach(({ change, ohms }, k) => {
		if (caughtBy[k]!.length > 0 && !from.has(change)) from.set(change, ohms);
	});
	return from;
}
