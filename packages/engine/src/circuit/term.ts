/** What a change, and the automata that moved, make of the conductors of a kept point. */
import { type Change, changed } from "./changes.js";
import type { Topology } from "./circuit.js";
import type { Operating } from "./operating.js";
import type { Shift } from "./shift.js";

/** One conductor's change: siemens and source amperes added. */
export interface Term {
	readonly a: number;
	readonly b: number;
	readonly dg: number;
	readonly dh: number;
	/** Branch number, or -1 for an added conductor. */
	readonly branch: number;
	/** Siemens before and after. */
	readonly before: number;
	readonly after: number;
	/** Source volts after. */
	readonly emf: number;
	/** Where the change stands in for one of another branch of its chain. */
	readonly shift: Shift | undefined;
}

/** A term whose numbers are written again for the next change: objects made for every one cost more than the solving. */
class Slot implements Term {
	a = -1;
	b = -1;
	// NaN first, so that the engine sees fractions from the start.
	dg = Number.NaN;
	dh = Number.NaN;
	branch = -1;
	before = Number.NaN;
	after = Number.NaN;
	emf = Number.NaN;
	shift: Shift | undefined = undefined;
}

/** The terms of one change after another at a kept point: those of the last are overwritten by the next. */
export class Terms {
	readonly #point: Operating<Topology>;
	readonly #dead: boolean;
	readonly #slots: Slot[] = [];
	#used = 0;
	/** By branch, its slot in use, or -1. */
	readonly #slotOf: Int32Array;

	constructor(point: Operating<Topology>, dead: boolean) {
		this.#point = point;
		this.#dead = dead;
		this.#slotOf = new Int32Array(point.circuit.branches.length).fill(-1);
	}

	/** Everything that differs from the point under a change, with the automata in `states`. */
	of(change: Change, states: Uint8Array): Term[] {
		const { siemens, emf } = this.#point;
		this.#used = 0;
		if (states !== this.#point.states) this.#moved(states);
		// The change has the last word.
		const { branches, added } = change;
		for (let k = 0; k < branches.length; k++) {
			const one = branches[k]!;
			const at = this.#slotOf[one.branch]!;
			const own = at < 0 ? undefined : this.#slots[at];
			const now = changed(one, own?.after ?? siemens[one.branch]!, own?.emf ?? emf[one.branch]!);
			this.#become(one.branch, now.siemens, now.emf);
		}
		let count = 0;
		for (let k = 0; k < this.#used; k++) {
			const slot = this.#slots[k]!;
			this.#slotOf[slot.branch] = -1;
			if (slot.dg === 0 && slot.dh === 0) continue;
			// What differs is moved to the front.
			this.#slots[k] = this.#slots[count]!;
			this.#slots[count++] = slot;
		}
		this.#used = count;
		for (let k = 0; k < added.length; k++) {
			const link = added[k]!;
			this.put(link.a, link.b, 0, link.siemens, link.siemens, 0, -1, 0);
		}
		// Not by push, which takes room for seventeen.
		return this.#used === 1 ? [this.#slots[0]!] : this.#slots.slice(0, this.#used);
	}

	/** What the automata that moved make of their branches. */
	#moved(states: Uint8Array): void {
		const { states: before, standing } = this.#point;
		for (let k = 0; k < states.length; k++) {
			if (states[k] === before[k]) continue;
			const { branches, spec } = standing.automata[k]!;
			const row = spec.table[states[k]!]!;
			for (let at = 0; at < branches.length; at++)
				this.#become(branches[at]!, row[at]!.siemens, row[at]!.emf);
		}
	}

	#become(branch: number, after: number, emf: number): void {
		const { siemens, emf: emfs, circuit } = this.#point;
		const before = siemens[branch]!;
		const dh = this.#dead ? 0 : after * emf - before * emfs[branch]!;
		const at = this.#slotOf[branch]!;
		if (at >= 0) {
			const slot = this.#slots[at]!;
			slot.after = after;
			slot.dg = after - before;
			slot.dh = dh;
			slot.emf = emf;
			return;
		}
		this.#slotOf[branch] = this.#used;
		const { a, b } = circuit.branches[branch]!;
		this.put(a, b, before, after, after - before, dh, branch, emf);
	}

	/** One more term beside those of the change. */
	put(
		a: number,
		b: number,
		before: number,
		after: number,
		dg: number,
		dh: number,
		branch: number,
		emf: number,
		shift?: Shift,
	): Term {
		if (this.#used === this.#slots.length) this.#slots.push(new Slot());
		const slot = this.#slots[this.#used++]!;
		slot.a = a;
		slot.b = b;
		slot.dg = dg;
		slot.dh = dh;
		slot.branch = branch;
		slot.before = before;
		slot.after = after;
		slot.emf = emf;
		slot.shift = shift;
		return slot;
	}
}

/** A hold put on a node, or taken away (negative siemens). */
export function hold(node: number, siemens: number): Term {
	const [before, after] = siemens < 0 ? [-siemens, 0] : [0, siemens];
	return { a: node, b: -1, dg: siemens, dh: 0, branch: -1, before, after, emf: 0, shift: undefined };
}
