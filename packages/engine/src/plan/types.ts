/** What is wanted of the wiring, what work costs, and the ways in which each circuit can be made. */
import type { RecipeStep } from "../loom/index.js";

/** A connection wanted of the converted car. */
export interface WantedCircuit {
	readonly target: string;
	readonly title: string;
	readonly from: string;
	readonly to: Destination;
	/** Least cross-section of every wire on the way. */
	readonly mm2: number;
	readonly class: CircuitClass;
	/** Most joints on the way; undefined: the general limit. 0: none may be made. */
	readonly mostJoints: number | undefined;
	readonly pair: string;
	readonly colours: readonly string[];
	readonly row: number;
}

export const CLASSES = ["signal", "sensor", "power", "bus pair", "restraint"] as const;
export type CircuitClass = (typeof CLASSES)[number];

/** What a circuit can be led to wherever it is nearest. */
export const RAILS = ["ground", "body ground", "engine ground", "switched feed", "permanent feed"] as const;
export type Rail = (typeof RAILS)[number];

export type Destination =
	| { readonly at: "contact" | "joint" | "function"; readonly name: string }
	| { readonly at: Rail };

/** A part that goes or comes whatever the wiring: the optimisation has no say in it, save where it `mayFit`. */
export interface WantedPart {
	readonly target: string;
	readonly title: string;
	readonly want: "remove" | "fit" | "may fit";
	readonly part: string;
	/** Work time; undefined: after the table of costs. */
	readonly minutes: number | undefined;
	readonly row: number;
}

/** Two contacts joined as delivered that must not be joined any more, save by what other rows want. */
export interface WantedParting {
	readonly target: string;
	readonly title: string;
	readonly from: string;
	/** A contact or joint. */
	readonly to: string;
	readonly row: number;
}

/** Where places lie: zone of all places whose words begin so, and for one the loom does not reach, what it lies near. */
export interface PlaceRow {
	readonly place: string;
	readonly zone: string;
	readonly near: string;
	readonly metres: number | undefined;
	/** Insulation of new wires there must stand this; undefined: not said. */
	readonly celsius: number | undefined;
}

/** targets.csv, costs.csv and places.csv, read. */
export interface PlanTables {
	readonly circuits: readonly WantedCircuit[];
	readonly parts: readonly WantedPart[];
	readonly partings: readonly WantedParting[];
	readonly costs: CostTable;
	readonly places: readonly PlaceRow[];
}

/** One row of the table of costs. What does not apply is 0. */
export interface CostRow {
	readonly minutes: number;
	/** In the shop's money. */
	readonly price: number;
	/** Of limits: metres or a count. */
	readonly value: number;
	readonly note: string;
}

/** Cost rows by item, and for items that differ by zone also by `item zone`. */
export type CostTable = ReadonlyMap<string, CostRow>;

/** What something costs: work, material in money, and the minutes of later fault finding it makes likely. */
export interface Price {
	readonly minutes: number;
	readonly material: number;
	readonly risk: number;
}

/** How a circuit is made. */
export const WAYS = ["reuse", "extend", "join", "move", "new"] as const;
export type Way = (typeof WAYS)[number];

/** A recipe row before it has its final names and number. */
export type Step = Omit<RecipeStep, "step" | "row">;

/** One way to make one circuit. */
export interface Option {
	readonly circuit: string;
	readonly way: Way;
	/** In words: `W421b extended to S-REV.1`. */
	readonly text: string;
	readonly steps: readonly Step[];
	readonly own: Price;
	/** Costs paid once however many options need them, by key: a housing opened, a splice opened, a passage. */
	readonly shared: ReadonlyMap<string, Price>;
	/** Things that can be used once: cavities, leads, wire ends. */
	readonly uses: readonly string[];
	/** Facilities that must be there, and that must not. */
	readonly needs: readonly string[];
	readonly bars: readonly string[];
	readonly joints: number;
	/** True where no old lead is taken up, so that it could be made in a second loom. */
	readonly allNew: boolean;
	/** Of the way a pair lies: both circuits of a pair must have the same. */
	readonly lies: string;
}

/** Work that several options may build on: a live lead cut, a ground point made. */
export interface Facility {
	readonly id: string;
	readonly text: string;
	readonly steps: readonly Step[];
	readonly own: Price;
	readonly shared: ReadonlyMap<string, Price>;
	readonly uses: readonly string[];
}
