/**
 * What a kind of device is: its pins, its settings, its states, and what it puts into the network.
 *
 * A device is described once, in its own file. Nothing outside that file knows its curve.
 */
import type { Contact, Part } from "../loom/index.js";

/** A point of the network, by name (see {@link NetworkBuilder}). */
export type NodeName = string;

/** What a branch belongs to, so that a fault or an explanation can name it. */
export interface Owner {
	readonly what: "wire" | "crimp" | "mated contact" | "device" | "joint" | "metal";
	/** Wire, contact, part or joint id. */
	readonly id: string;
	/** For a crimp or a joint: the wire whose end it holds. For a device: which element of it. */
	readonly element: string;
}

/** One two-terminal element: i(a to b) = siemens x (v(a) - v(b) - emf). */
export interface BranchSpec {
	readonly a: NodeName;
	readonly b: NodeName;
	/** 0 means open: the branch stands in the pattern but conducts nothing. */
	readonly siemens: number;
	/** Source voltage in volts, positive at `a`. */
	readonly emf?: number;
	/** Relative standard deviation of the resistance, from tolerance or scatter. */
	readonly spread: number;
	/** Standard deviation of `emf` in volts. */
	readonly emfSpread?: number;
	/** The source follows a difference elsewhere: emf + gain x (v(a) - v(b)). Dead where all sources are. */
	readonly control?: ControlSpec;
	readonly owner: Owner;
}

/** What a controlled source follows. */
export interface ControlSpec {
	readonly a: NodeName;
	readonly b: NodeName;
	readonly gain: number;
	/** Standard deviation of `gain`. */
	readonly gainSpread: number;
}

/** What a branch becomes in one state of an automaton. */
export interface BranchState {
	readonly siemens: number;
	readonly emf: number;
}

/**
 * A device part that switches by itself: a relay, a diode, a lamp warming up, a unit waking.
 * Its state is found together with the potentials.
 */
export interface AutomatonSpec {
	readonly part: string;
	/** What switches, for messages: `coil`, `junction`, `power`. */
	readonly element: string;
	/** Names of the states; index 0 is the state at rest, from which solving starts. */
	readonly states: readonly string[];
	/** Branch numbers (as returned by `branch`) the state decides. */
	readonly branches: readonly number[];
	/** `table[state][k]` is what `branches[k]` is in that state. */
	readonly table: readonly (readonly BranchState[])[];
	/** Node pairs whose potential differences decide the state. */
	readonly watch: readonly (readonly [NodeName, NodeName])[];
	/** The state that follows, from the watched differences in volts. Must be pure. */
	readonly next: (state: number, volts: readonly number[]) => number;
	/** Volts, for each watched difference: while all move by less than that from those given, `next` answers the same. */
	readonly slack: (state: number, volts: readonly number[]) => readonly number[];
	/** Of a part that runs or does not: what its branches are, by number, when it does not, whatever it is meant to do. */
	readonly idle?: ReadonlyMap<number, BranchState>;
}

/** Receives a device's elements. A device must add the same branches and automata in the same order in every state. */
export interface NetworkBuilder {
	/** The device's own side of a contact. */
	pin(contact: string): NodeName;
	/** A point inside the device. */
	inside(part: string, name: string): NodeName;
	/** Adds a branch and returns its number. */
	branch(spec: BranchSpec): number;
	automaton(spec: AutomatonSpec): void;
}

/** A number a device takes, with its default. */
export interface ValueRule {
	/** Undefined: the table must give it. */
	readonly default: number | undefined;
	readonly min: number;
	readonly max: number;
	readonly unit: string;
	/** Where the default comes from: a standard, a row of reference/, or `common practice, no source`. */
	readonly source: string;
}

export interface DeviceKind {
	readonly kind: string;
	readonly title: string;
	/** Pin roles it knows, or `any` (a switch names its own). */
	readonly roles: readonly string[] | "any";
	/** Roles that must be present. */
	readonly needs: readonly string[];
	/** May several contacts have the same role? */
	readonly repeats: boolean;
	readonly values: Readonly<Record<string, ValueRule>>;
	/** Settings of a pin by role. */
	readonly pinValues?: Readonly<Record<string, Readonly<Record<string, ValueRule>>>>;
	/** States a condition may put the part in, the default first; `number` where a setting is a number. */
	states(part: Part): readonly string[] | NumberState;
	/** States a condition may put one of its pins in, the default first. */
	pinStates?(contact: Contact): readonly string[];
	build(view: DeviceView, net: NetworkBuilder): void;
}

/** A part set by a number, e.g. percent of travel or degrees C. */
export interface NumberState {
	readonly unit: string;
	readonly min: number;
	readonly max: number;
	readonly default: number;
}

/** One device as it stands in one condition. */
export interface DeviceView {
	readonly part: Part;
	/** State word or number as text, from the condition or the default. */
	readonly state: string;
	/** Contacts with that role, in table order. */
	withRole(role: string): readonly Contact[];
	/** The pin node of the first contact with that role, or undefined if the part lacks it. */
	pinOf(role: string): NodeName | undefined;
	value(name: string): number;
	pinValue(contact: Contact, name: string): number;
	pinState(contact: Contact): string;
}

/** An element of the device itself. */
export function own(part: Part, element: string): Owner {
	return { what: "device", id: part.id, element };
}

/** Shorthand for a value rule. */
export function value(
	fallback: number | undefined,
	unit: string,
	min: number,
	max: number,
	source: string,
): ValueRule {
	return { default: fallback, unit, min, max, source };
}

export const PRACTICE = "common practice, no source";
