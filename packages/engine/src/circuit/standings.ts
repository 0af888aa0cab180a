/**
 * What every branch of a loom is under any settings, from what it is with nothing set: only the parts that a setting
 * speaks to are built again, in their own places.
 */
import type { AutomatonSpec, BranchSpec } from "../devices/index.js";
import type { Contact, Loom } from "../loom/index.js";
import type { Automaton, Standing } from "./circuit.js";
import type { Control } from "./controls.js";
import { buildPart, contactsByPart, type Network, type PartPlace } from "./network.js";

export class Standings {
	readonly #loom: Loom;
	readonly #contactsOf: ReadonlyMap<string, readonly Contact[]>;
	readonly #placeOf: ReadonlyMap<string, PartPlace>;
	readonly #number: (name: string) => number;
	readonly #siemens: Float64Array;
	readonly #emf: Float64Array;
	readonly #automata: readonly Automaton[];
	/** Sources that follow a difference, by branch; those of other looms' branches among them. */
	readonly #controls = new Map<number, Control>();
	/** Parts that a setting of a part, connector or contact speaks to. */
	readonly #spokenTo = new Map<string, Set<string>>();

	/**
	 * @param base the loom's network with nothing set
	 * @param specs branches of the pattern, of which the first are those of `base`
	 * @param number of a point by name
	 */
	constructor(loom: Loom, base: Network, specs: readonly BranchSpec[], number: (name: string) => number) {
		this.#loom = loom;
		this.#contactsOf = contactsByPart(loom);
		this.#placeOf = base.placeOf;
		this.#number = number;
		this.#siemens = new Float64Array(specs.length);
		this.#emf = new Float64Array(specs.length);
		base.branches.forEach((spec, k) => {
			put(this.#siemens, this.#emf, k, spec);
		});
		specs.forEach((spec, k) => {
			const control = this.#controlOf(spec, k);
			if (control) this.#controls.set(k, control);
		});
		this.#automata = base.automata.map((spec) => this.#numbered(spec));
		for (const part of loom.parts.keys()) this.#speaks(part, part);
		for (const contact of loom.contacts.values()) {
			this.#speaks(contact.id, contact.part);
			if (contact.connector !== "") this.#speaks(contact.connector, contact.part);
		}
	}

	/** @param condition what the standing is called in messages */
	under(settings: ReadonlyMap<string, string>, condition: string): Standing {
		const siemens = this.#siemens.slice();
		const emf = this.#emf.slice();
		const automata = this.#automata.slice();
		const controls = new Map(this.#controls);
		const parts = new Set<string>();
		for (const subject of settings.keys())
			for (const part of this.#spokenTo.get(subject) ?? []) parts.add(part);
		for (const id of parts) {
			const place = this.#placeOf.get(id)!;
			let { branch, automaton } = place;
			const add = (spec: BranchSpec): number => {
				put(siemens, emf, branch, spec);
				const control = this.#controlOf(spec, branch);
				if (control) controls.set(branch, control);
				return branch++;
			};
			const contacts = this.#contactsOf.get(id) ?? [];
			buildPart(this.#loom.parts.get(id)!, contacts, settings, add, (spec) => {
				automata[automaton++] = this.#numbered(spec);
			});
			if (branch !== place.branch + place.branches)
				throw new Error(`${id}: its kind adds branches by condition`);
		}
		return { condition, siemens, emf, automata, controls: [...controls.values()] };
	}

	#controlOf({ control }: BranchSpec, branch: number): Control | undefined {
		if (control === undefined) return undefined;
		const { a, b, gain, gainSpread } = control;
		return { branch, a: this.#number(a), b: this.#number(b), gain, gainSpread };
	}

	#speaks(subject: string, part: string): void {
		const parts = this.#spokenTo.get(subject);
		if (parts) parts.add(part);
		else this.#spokenTo.set(subject, new Set([part]));
	}

	#numbered(spec: AutomatonSpec): Automaton {
		return {
			spec,
			branches: spec.branches,
			watch: spec.watch.map(([a, b]) => [this.#number(a), this.#number(b)] as const),
		};
	}
}

function put(siemens: Float64Array, emf: Float64Array, at: number, spec: BranchSpec): void {
	siemens[at] = spec.siemens;
	emf[at] = spec.emf ?? 0;
}
