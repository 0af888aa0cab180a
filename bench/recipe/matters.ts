/**
 * Does a mistake matter electrically? The car with the mistake is held against the car as intended, without any rule:
 * in every listed condition, with each switch of the car in each of its positions, with each fuse pulled.
 *
 * It matters where a function or a code comes out otherwise, a reading at a pin lies outside the intended car's band, a
 * condition does not settle, a bare end is live, a load stays fed by a pulled fuse, a wire is no longer protected by its
 * fuse or gets too hot, or a restraint circuit is altered.
 */
import {
	branchAmps,
	type Circuit,
	CircuitError,
	type Operating,
	operate,
	pinNode,
	separated,
	settingsOf,
	voltsAt,
	wireEndNode,
} from "../../packages/engine/src/circuit/index.js";
import type { FunctionNeed, Loom, Monitor, Wire } from "../../packages/engine/src/loom/index.js";
import { deviationOf, meterError, WORKSHOP_METER } from "../../packages/engine/src/readings/index.js";
import { setCodes } from "../../packages/engine/src/rules/support/codes.js";
import { isFuse } from "../../packages/engine/src/rules/support/feeds.js";
import { acrossLoad, loadsOf } from "../../packages/engine/src/rules/support/loads.js";
import { changed, conditionsOf, isWhole } from "../../packages/engine/src/rules/support/points.js";
import { quantityValue } from "../../packages/engine/src/rules/support/quantities.js";
import { bundleShare, ratedAmps, wireRise } from "../../packages/engine/src/units/index.js";
import { alikePins } from "./alike-pins.js";

/** The condition from which switches and fuses are tried. */
const BASE = "key-on";
const FUSED_BASES = ["key-on", "actuators-on"];
const LIVE_VOLTS = 1;
/** Of a dead short at the wire, and the share of its rating at which a blade fuse opens within minutes (fuse-time-current). */
const SHORT_OHMS = 0.01;
const OPENS_AT = 1.35;
const AIR = 40;
/** Class B insulation for a working current, and what copper and plastic stand for the minutes until a fuse opens. */
const LASTING = 100;
const SHORTED = 160;

/** What the intended car shows; kept over many mistakes. */
export class Intended {
	readonly #bands = new Map<string, number>();
	readonly #switched: ReadonlyMap<string, Operating>;
	readonly #back: ReadonlySet<string>;

	readonly #alike: ReadonlyMap<string, string>;

	constructor(readonly circuit: Circuit) {
		this.#alike = alikePins(circuit.loom);
		this.#switched = switchedPoints(circuit);
		this.#back = backFed(circuit);
	}

	/** Why the mistake matters; undefined where it does not. */
	matters(circuit: Circuit): string | undefined {
		return (
			this.#restraint(circuit) ??
			this.#settles(circuit) ??
			this.#functions(circuit) ??
			this.#codes(circuit) ??
			this.#readings(listed(this.circuit), listed(circuit)) ??
			this.#live(circuit) ??
			this.#readings(this.#switched, switchedPoints(circuit)) ??
			this.#unprotected(circuit) ??
			this.#hot(circuit) ??
			this.#backFeed(circuit)
		);
	}

	#restraint({ loom }: Circuit): string | undefined {
		const marked = (one: Loom) =>
			JSON.stringify([...one.wires.values()].filter((wire) => wire.marks.includes("pyrotechnic")));
		return marked(loom) === marked(this.circuit.loom) ? undefined : "restraint";
	}

	#settles(circuit: Circuit): string | undefined {
		return conditionsOf(circuit).unsettled.length > conditionsOf(this.circuit).unsettled.length
			? "does not settle"
			: undefined;
	}

	#functions(circuit: Circuit): string | undefined {
		const held = (one: Circuit, need: FunctionNeed) => {
			const at = listed(one).get(need.when);
			const seen = at && quantityValue(at, need, "");
			const value = seen === undefined || Number.isNaN(seen) ? 0 : seen;
			return (need.low === undefined || value >= need.low) && (need.high === undefined || value <= need.high);
		};
		const need = this.circuit.loom.functions.find(
			(one) => held(this.circuit, one) && !(present(circuit.loom, one) && held(circuit, one)),
		);
		return need && `function ${need.function}`;
	}

	#codes(circuit: Circuit): string | undefined {
		const [now, was] = [circuit, this.circuit].map(
			(one) => new Set(setCodes(one).map(({ monitor }) => keyOf(monitor))),
		);
		for (const code of now!) if (!was!.has(code)) return `code ${code}`;
		return undefined;
	}

	/** Volts of every pin of a part against the battery's minus; pins that may be changed over count either way. */
	#readings(was: ReadonlyMap<string, Operating>, now: ReadonlyMap<string, Operating>): string | undefined {
		for (const [condition, before] of was) {
			const point = now.get(condition);
			if (point === undefined) return `does not settle in ${condition}`;
			for (const contact of this.circuit.loom.contacts.keys()) {
				const differs = this.#differs(before, point, condition, contact, contact);
				if (differs === undefined) continue;
				const other = this.#alike.get(contact);
				const crossed =
					other !== undefined &&
					this.#differs(before, point, condition, contact, other) === undefined &&
					this.#differs(before, point, condition, other, contact) === undefined;
				if (!crossed) return differs;
			}
		}
		return undefined;
	}

	/** How the reading at `there` now lies outside the band of that at `here` in the intended car. */
	#differs(before: Operating, point: Operating, condition: string, here: string, there: string) {
		const [a, minus] = pins(this.circuit, here);
		const [b, reference] = pins(point.circuit, there);
		if (a === undefined || b === undefined) return undefined;
		const [open, opened] = [separated(before, a, minus), separated(point, b, reference)];
		if (open && opened) return undefined;
		if (open !== opened) return `reading ${here} in ${condition}: ${opened ? "open" : "no longer open"}`;
		const value = voltsAt(before.volts, a) - voltsAt(before.volts, minus);
		const seen = voltsAt(point.volts, b) - voltsAt(point.volts, reference);
		const off = Math.abs(seen - value);
		const meter = meterError(WORKSHOP_METER, "volts", value);
		if (off <= meter || off <= meter + this.#band(before, condition, here, a, minus)) return undefined;
		return `reading ${here} in ${condition}: ${seen.toFixed(3)} V for ${value.toFixed(3)} V`;
	}

	#band(point: Operating, condition: string, contact: string, a: number, b: number): number {
		const key = `${condition}|${contact}`;
		let band = this.#bands.get(key);
		if (band === undefined) {
			band = 2 * deviationOf(point, { kind: "volts", a, b });
			this.#bands.set(key, band);
		}
		return band;
	}

	#live(circuit: Circuit): string | undefined {
		for (const wire of circuit.loom.wires.values())
			for (const side of ["from", "to"] as const) {
				const end = wire[side];
				const same = this.circuit.loom.wires.get(wire.id)?.[side];
				if (end.at !== "loose" || end.insulated || (same?.at === "loose" && !same.insulated)) continue;
				const node = circuit.node(wireEndNode(wire.id, side))!;
				for (const [condition, point] of everyListed(circuit))
					if (!separated(point, node, -1) && Math.abs(voltsAt(point.volts, node)) > LIVE_VOLTS)
						return `bare end of ${wire.id} live in ${condition}`;
			}
		return undefined;
	}

	/** A short to the body at either end of a wire that is new or otherwise than intended: does a fuse open in time? */
	#unprotected(circuit: Circuit): string | undefined {
		const fuses = JSON.stringify(fuseValues(circuit.loom)) !== JSON.stringify(fuseValues(this.circuit.loom));
		for (const wire of circuit.loom.wires.values()) {
			const meant = this.circuit.loom.wires.get(wire.id);
			const altered = meant === undefined || JSON.stringify(meant) !== JSON.stringify(wire);
			if (!altered && !fuses) continue;
			if (burns(circuit, wire) && !(meant !== undefined && burns(this.circuit, meant)))
				return `${wire.id} not protected by its fuse`;
		}
		return undefined;
	}

	#hot(circuit: Circuit): string | undefined {
		const hot = (one: Circuit) => {
			const found = new Set<string>();
			for (const [condition, point] of listed(one)) {
				if (condition.startsWith("cranking")) continue;
				one.branches.forEach(({ owner }, branch) => {
					const wire = owner.what === "wire" ? one.loom.wires.get(owner.id) : undefined;
					if (wire === undefined) return;
					const rated = ratedAmps(wire.mm2) * (wire.bundle === "" ? 1 : bundleShare(4));
					if (AIR + wireRise(branchAmps(point, branch), rated, LASTING) > LASTING) found.add(wire.id);
				});
			}
			return found;
		};
		const meant = hot(this.circuit);
		const first = [...hot(circuit)].find((wire) => !meant.has(wire));
		return first && `${first} too hot`;
	}

	#backFeed(circuit: Circuit): string | undefined {
		const first = [...backFed(circuit)].find((pair) => !this.#back.has(pair));
		return first && `pulled fuse: ${first}`;
	}
}

/** Nodes of a part's pin, undefined where this car lacks it, and of the battery's minus. */
function pins(circuit: Circuit, contact: string): [number | undefined, number] {
	return [circuit.node(pinNode(contact)), circuit.node(pinNode("BAT.-"))!];
}

const keyOf = (monitor: Monitor) => `${monitor.unit} ${monitor.code}`;
const present = (loom: Loom, { contact }: FunctionNeed) => loom.contacts.has(contact.replace(/!pin$/, ""));
const fuseValues = (loom: Loom) =>
	[...loom.parts.values()].filter((part) => part.kind === "fuse").map((part) => part.values.amps);

function everyListed(circuit: Circuit): [string, Operating][] {
	return conditionsOf(circuit).settled.map(({ condition, point }) => [condition, point]);
}

function listed(circuit: Circuit): ReadonlyMap<string, Operating> {
	return new Map(
		conditionsOf(circuit)
			.settled.filter(({ settings }) => isWhole(circuit, settings))
			.map(({ condition, point }) => [condition, point]),
	);
}

/** Each switch in each of its positions with the key at run and at start; the pedal, neutral and reverse together. */
function switchedPoints(circuit: Circuit): ReadonlyMap<string, Operating> {
	const { loom } = circuit;
	const sets: [string, string][][] = [];
	const switches = [...loom.parts.values()].filter(
		(part) => part.kind === "switch" && part.duty !== "start key",
	);
	for (const part of switches) for (const { name } of part.positions) sets.push([[part.id, name]]);
	for (const a of loom.parts.get("S-CLU")?.positions ?? [])
		for (const b of loom.parts.get("S-NEU")?.positions ?? [])
			for (const c of loom.parts.get("S-REV")?.positions ?? [])
				sets.push([
					["S-CLU", a.name],
					["S-NEU", b.name],
					["S-REV", c.name],
					["S-KEY", "start"],
					["ECU.A10", "on"],
				]);
	const base = settingsOf(loom, BASE);
	const found = new Map<string, Operating>();
	for (const set of sets) {
		const name = set.map((pair) => pair.join("=")).join("; ");
		try {
			found.set(name, operate(circuit, circuit.standingOf(new Map([...base, ...set]), name)));
		} catch (error) {
			if (!(error instanceof CircuitError)) throw error;
		}
	}
	return found;
}

/** `FUSE LOAD` for each load that still has current with the fuse pulled that feeds it. */
function backFed(circuit: Circuit): ReadonlySet<string> {
	const found = new Set<string>();
	const points = listed(circuit);
	for (const base of FUSED_BASES) {
		const point = points.get(base);
		if (point === undefined) continue;
		circuit.branches.forEach((branch, k) => {
			if (!isFuse(circuit, k) || Math.abs(branchAmps(point, k)) < 1e-3) return;
			const without = changed(point, [{ branch: k, siemens: 0 }]);
			if (without === undefined) return;
			for (const load of loadsOf(circuit)) {
				const [was, now] = [point, without].map((at) => Math.abs(acrossLoad(at, load)));
				if (now! < 0.95 * was! && now! > LIVE_VOLTS && Math.abs(branchAmps(without, load.branch)) > 1e-3)
					found.add(`${branch.owner.id} ${load.part.id}`);
			}
		});
	}
	return found;
}

/** Would a dead short at an end of this wire heat it beyond what it stands before a fuse opens? */
function burns(circuit: Circuit, wire: Wire): boolean {
	const conductor = circuit.branches.findIndex(({ owner }) => owner.what === "wire" && owner.id === wire.id);
	return (["from", "to"] as const).some((side) => {
		const node = circuit.node(wireEndNode(wire.id, side))!;
		// In the first listed condition in which it is live.
		for (const point of listed(circuit).values()) {
			if (separated(point, node, -1) || voltsAt(point.volts, node) < 6) continue;
			const added = [{ a: node, b: -1, siemens: 1 / SHORT_OHMS }];
			let shorted: Operating;
			try {
				shorted = operate(circuit, point.standing, { change: { branches: [], added } });
			} catch {
				return false;
			}
			const amps = Math.abs(branchAmps(shorted, conductor));
			if (amps < 2 * Math.abs(branchAmps(point, conductor)) + 1) return false;
			let most = 0;
			circuit.branches.forEach(({ owner }, k) => {
				if (!isFuse(circuit, k)) return;
				const rating = circuit.loom.parts.get(owner.id)?.values.amps ?? 1;
				most = Math.max(most, Math.abs(branchAmps(shorted, k)) / rating);
			});
			const lasting = most <= OPENS_AT ? amps : (amps * OPENS_AT) / most;
			return AIR + wireRise(lasting, ratedAmps(wire.mm2), SHORTED) > SHORTED;
		}
		return false;
	});
}
