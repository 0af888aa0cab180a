/** Every way to make one circuit. */
import type { Access, AccessFinder, SideOf } from "./access.js";
import { plus, times } from "./costs.js";
import { type Attach, type Leg, LegMaker } from "./leg.js";
import { anchorOf } from "./places.js";
import { bridged, reused } from "./ready-made.js";
import type { Run } from "./runs.js";
import type { Situation } from "./situation.js";
import type { Option, Price, Step, WantedCircuit } from "./types.js";

export function optionsOf(
	at: Situation,
	circuit: WantedCircuit,
	from: SideOf,
	to: SideOf,
	finder: AccessFinder,
	runs: readonly Run[],
	price: (steps: readonly Step[]) => { own: Price; shared: Map<string, Price> },
): Option[] {
	const legs = new LegMaker(circuit, at.places, at.costs);
	const fixedFrom = finder.of(from, circuit, []);
	const fixedTo = finder.of(to, circuit, []);
	const placesOf = (found: readonly Access[]) => [...new Set(found.map(({ spot }) => anchorOf(spot)))];
	const fromPoints = finder.of(from, circuit, placesOf(fixedTo));
	const toPoints = finder.of(to, circuit, placesOf(fixedFrom));
	const most = circuit.mostJoints ?? at.costs.row("most joints").value;
	const found: Option[] = [
		...reused(at, circuit, from, to, fromPoints),
		...bridged(at, circuit, from, to, price),
	];
	const add = (a: Access, b: Access, parts: readonly Leg[], run?: Run) => {
		const joints = parts.reduce((sum, leg) => sum + leg.joints, 0);
		if (joints > most) return;
		const [first, second] = parts.map((leg) => leg.steps);
		const work = run?.steps ?? [];
		const steps = [...a.steps, ...b.steps];
		if (run?.freed === "from") steps.push(...(second ?? []), ...work, ...(first ?? []));
		else if (run?.freed === "to") steps.push(...(first ?? []), ...work, ...(second ?? []));
		else steps.push(...work, ...(first ?? []), ...(second ?? []));
		const { own, shared } = price(steps);
		const ends = [...a.ends, ...b.ends, ...(run?.ends ?? [])];
		found.push({
			circuit: circuit.target,
			way: wayOf(a, b, run, parts),
			text: textOf(a, b, run),
			steps: steps.map((one) => ({ ...one, title: `${circuit.title || circuit.target}: ${one.title}` })),
			own: plus(own, times(at.costs.work("isolate"), -taken(ends))),
			shared,
			uses: [...a.uses, ...b.uses, ...(run?.uses ?? [])],
			needs: [...new Set([...a.needs, ...b.needs, ...(run?.needs ?? [])])],
			bars: [...new Set([...a.bars, ...b.bars])],
			joints,
			allNew: ends.length === 0,
			lies: circuit.pair === "" ? "" : [a.lies, run?.pairs ?? "", b.lies].join("|"),
		});
	};
	for (const a of fromPoints)
		for (const b of toPoints) {
			if (clash(a, b)) continue;
			const leg = legs.between(a, b);
			if (leg) add(a, b, [leg]);
		}
	for (const run of runs) {
		if (run.mm2 < circuit.mm2 || (run.pairs !== "" && circuit.pair === "")) continue;
		const { from: u, to: v } = run;
		for (const a of fixedFrom) {
			if (a.uses.some((one) => run.uses.includes(one)) || a.bars.some((one) => run.needs.includes(one)))
				continue;
			const first = legs.between(a, u, true);
			if (first === undefined || first.joints > most) continue;
			for (const b of fixedTo) {
				if (clash(a, b) || b.uses.some((one) => run.uses.includes(one))) continue;
				if (b.bars.some((one) => run.needs.includes(one))) continue;
				const second = legs.between(v, b, true);
				if (second) add(a, b, [first, second], run);
			}
		}
	}
	return found;
}

/** Two points that cannot both be taken: the same thing twice, or one that the other does away with. */
function clash(a: Access, b: Access): boolean {
	return (
		a.uses.some((one) => b.uses.includes(one)) ||
		a.needs.some((one) => b.bars.includes(one)) ||
		b.needs.some((one) => a.bars.includes(one)) ||
		nameOf(a.attach) === nameOf(b.attach)
	);
}

const nameOf = (attach: Attach): string =>
	attach.by === "cavity"
		? attach.contact
		: attach.by === "joint"
			? attach.joint
			: `${attach.by} ${attach.wire}`;

/** Wires that need not be isolated: all their bare ends are taken up. */
function taken(ends: readonly { readonly wire: string; readonly of: number }[]): number {
	const counts = new Map<string, number>();
	for (const { wire } of ends) counts.set(wire, (counts.get(wire) ?? 0) + 1);
	return [...counts].filter(([wire, count]) => ends.find((end) => end.wire === wire)!.of === count).length;
}

function wayOf(a: Access, b: Access, run: Run | undefined, legs: readonly Leg[]): Option["way"] {
	if (a.way === "move" || b.way === "move") return "move";
	if ((run !== undefined && run.ends.length > 0) || a.way === "extend" || b.way === "extend")
		return legs.every(({ metres }) => metres === 0) ? "join" : "extend";
	return a.way === "join" || b.way === "join" ? "join" : "new";
}

function textOf(a: Access, b: Access, run: Run | undefined): string {
	const words = ({ attach, steps }: Access) => {
		const moved = steps.find(({ kind }) => kind === "move terminal");
		if (moved) return `${moved.to} with the lead moved from ${moved.from}`;
		if (attach.by === "tap") return `${attach.wire}, ${attach.at} m along it`;
		if (attach.by === "bare") return `the bare end of ${attach.wire}`;
		return attach.by === "joint" ? attach.joint : attach.contact;
	};
	return `${words(a)} to ${words(b)}${run ? ` by ${run.text}` : ""}`;
}
