/**
 * The loom as data: parts with contacts, and the wires and joints between them.
 *
 * Everything here is immutable once read. Names are the ones the shop writes in
 * its tables (docs/tables.md); quantities carry their unit in the field name.
 */

/** Where one end of a wire is: crimped into a contact, part of a joint, or loose. */
export type WireEnd =
	| { readonly at: "contact"; readonly contact: string }
	| { readonly at: "joint"; readonly joint: string }
	/** A cut or not yet fitted end. `insulated` is true once it is isolated and stowed. */
	| { readonly at: "loose"; readonly insulated: boolean };

/** Something with contacts: a control unit, a sensor, a fuse, a relay, or a connector housing. */
export interface Part {
	readonly id: string;
	/** A device kind (docs/tables.md lists them), e.g. `fuse`, `relay`, `control unit`, `connector`. */
	readonly kind: string;
	readonly label: string;
	/** Where it sits on the car, in words. */
	readonly place: string;
	/** What the part is for, where a rule or function must know: e.g. `clutch switch`. Empty otherwise. */
	readonly duty: string;
	/** Settings of the device kind in its own units, e.g. `{ ohms: 85 }`. */
	readonly values: Readonly<Record<string, number>>;
	/** Of a switch: its positions, the one at rest first, with the roles each joins. Empty otherwise. */
	readonly positions: readonly Position[];
	/** Words that change how the part is treated, e.g. `pyrotechnic`. */
	readonly marks: readonly string[];
	/** Minutes until its contacts can be got at: what must come off, the car raised. Undefined: they lie open. */
	readonly reachMinutes?: number | undefined;
	readonly note: string;
}

/** One position of a switch and the pairs of its contacts' roles that it joins. */
export interface Position {
	readonly name: string;
	readonly joins: readonly (readonly [string, string])[];
}

/** One terminal of a part. The loom's terminal is crimped to a wire and mated with the part's pin. */
export interface Contact {
	/** `PART.NAME`, e.g. `ECU.A12` or `K1.87`. */
	readonly id: string;
	readonly part: string;
	/** The connector part whose housing holds the loom's terminal; empty where the wire is bolted or plugged alone. */
	readonly connector: string;
	readonly cavity: string;
	/** What the pin is, by the device kind: `85`, `supply`, `sensor return`, `signal`, ... */
	readonly role: string;
	/** Settings of this pin where it differs from its role's defaults, e.g. `{ pullup_ohms: 2200 }`. */
	readonly values: Readonly<Record<string, number>>;
	readonly label: string;
	readonly note: string;
}

export interface Wire {
	readonly id: string;
	readonly from: WireEnd;
	readonly to: WireEnd;
	/** Conductor cross-section in mm2. */
	readonly mm2: number;
	/** IEC 60757 codes, base colour first: `["BK", "WH"]`. Empty when not known. */
	readonly colours: readonly string[];
	readonly metres: number;
	/** The circuit's name: one word for wires that belong together, e.g. `sensor return`. */
	readonly circuit: string;
	/** Twisted-pair name; wires with the same name are twisted together. Empty otherwise. */
	readonly pair: string;
	/** The branch of the loom in which the wire lies; neighbours in it can chafe together. */
	readonly bundle: string;
	readonly marks: readonly string[];
	readonly note: string;
}

/** A place where wires meet without a device: a splice, a ground point, a bus bar. */
export interface Joint {
	readonly id: string;
	readonly kind: "splice" | "ground" | "bar";
	readonly label: string;
	readonly place: string;
	/** Joint resistance in ohms per wire end; undefined means the kind's default. */
	readonly ohms: number | undefined;
	/** For `ground`: the metal it is bolted to, `body` or `engine`. Empty otherwise. */
	readonly metal: string;
	readonly marks: readonly string[];
	readonly note: string;
}

/** How the car stands: each named part, connector or control-unit pin and its state. */
export interface Condition {
	readonly id: string;
	readonly title: string;
	/** Another condition whose settings hold unless set here. Empty for none. */
	readonly like: string;
	/** Part or contact id to state word, e.g. `S-KEY` to `run`. Only what this condition itself sets. */
	readonly settings: ReadonlyMap<string, string>;
}

/** What a control unit or a person measures: a difference of two potentials, or a current. */
export interface Quantity {
	readonly measures: "volts" | "amps";
	readonly contact: string;
	/** Volts: the second lead (empty: the unit's ground, else battery minus). Amps: the contact to which the current flows. */
	readonly reference: string;
}

/** A control unit's own window on its pins: outside it, the trouble code is set. */
export interface Monitor extends Quantity {
	readonly code: string;
	readonly unit: string;
	readonly title: string;
	/** The condition in which the unit looks. */
	readonly when: string;
	/** Compare with this twin contact: the value is volts(contact) - ratio x volts(twin). Empty for none. */
	readonly twin: string;
	readonly ratio: number;
	/** Holds only before (`delivered`) or after (`converted`) the conversion; empty for both. */
	readonly of: "" | "delivered" | "converted";
	/** The code is set below this value (undefined: never). */
	readonly below: number | undefined;
	/** The code is set above this value (undefined: never). */
	readonly above: number | undefined;
	readonly note: string;
}

/** One thing that must be true for a function of the car, e.g. fuel pump volts while cranking. */
export interface FunctionNeed extends Quantity {
	/** The function's id, e.g. `cranks`; it holds when all its needs hold. */
	readonly function: string;
	readonly title: string;
	readonly when: string;
	readonly low: number | undefined;
	readonly high: number | undefined;
	readonly of: "" | "delivered" | "converted";
}

/** A whole car's wiring, validated and frozen. */
export interface Loom {
	readonly name: string;
	readonly parts: ReadonlyMap<string, Part>;
	readonly contacts: ReadonlyMap<string, Contact>;
	readonly wires: ReadonlyMap<string, Wire>;
	readonly joints: ReadonlyMap<string, Joint>;
	readonly conditions: ReadonlyMap<string, Condition>;
	readonly monitors: readonly Monitor[];
	readonly functions: readonly FunctionNeed[];
}
