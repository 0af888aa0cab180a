/** A circuit drawing as data, before it is laid out: parts with ports, joints, and the wires between them. */
import type { Position } from "@loomwright/engine";

/** `north`: the wire leaves upwards, towards supply; `south`: downwards, towards ground. */
export type Side = "north" | "south";

export interface SheetPort {
	/** The contact's id. */
	readonly contact: string;
	/** The contact's name on its part: cavity, or terminal number after DIN 72552. */
	readonly name: string;
	readonly role: string;
	readonly label: string;
	readonly connector: string;
	readonly cavity: string;
	readonly side: Side;
}

export interface SheetPart {
	readonly what: "part";
	readonly id: string;
	readonly kind: string;
	readonly label: string;
	readonly place: string;
	readonly marks: readonly string[];
	readonly ports: readonly SheetPort[];
	readonly positions: readonly Position[];
	/** State word in the condition drawn, e.g. a switch's position, `pulled in`; empty where it has none. */
	readonly state: string;
}

/** Two halves of one cavity of a connector between two looms. */
export interface SheetContactPair {
	readonly what: "pair";
	/** `CONNECTOR/CAVITY`. */
	readonly id: string;
	readonly connector: string;
	readonly label: string;
	readonly cavity: string;
	readonly ports: readonly SheetPort[];
	readonly mated: boolean;
}

export interface SheetJoint {
	readonly what: "joint";
	readonly id: string;
	readonly kind: "splice" | "ground" | "bar";
	readonly label: string;
	readonly place: string;
	/** Wires drawn that come from above, and those that leave downwards. */
	readonly above: readonly string[];
	readonly below: readonly string[];
	/** Wires there that are not drawn. */
	readonly undrawn: number;
}

export interface SheetLooseEnd {
	readonly what: "loose";
	readonly id: string;
	readonly insulated: boolean;
}

export type SheetNode = SheetPart | SheetContactPair | SheetJoint | SheetLooseEnd;

export interface SheetEnd {
	readonly node: string;
	/** Contact id; empty for a joint or a loose end. */
	readonly port: string;
}

export interface SheetWire {
	readonly id: string;
	/** The end nearer to supply comes first, whichever the table calls `from`. */
	readonly upper: SheetEnd;
	readonly lower: SheetEnd;
	/** True where `upper` is the table's `from`. */
	readonly forward: boolean;
	readonly colours: readonly string[];
	readonly mm2: number;
	readonly metres: number;
	readonly circuit: string;
	readonly pair: string;
	readonly bundle: string;
	readonly marks: readonly string[];
	/** On the path asked for, not only around it. */
	readonly onPath: boolean;
}

export interface Sheet {
	readonly nodes: readonly SheetNode[];
	readonly wires: readonly SheetWire[];
	/** Names of the path that this loom does not have. */
	readonly unknown: readonly string[];
	/** True where one wire further would show more. */
	readonly more: boolean;
}
