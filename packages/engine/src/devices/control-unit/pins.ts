/** What each pin role of a control unit puts between the pin and the unit's ground or supply. */
import type { BranchState, ValueRule } from "../types.js";
import { PRACTICE, value } from "../types.js";

/** One branch of a pin, in the three states of the unit. */
export interface PinElement {
	readonly name: string;
	readonly to: "ground" | "supply";
	readonly asleep: BranchState;
	readonly awake: BranchState;
	readonly powered: BranchState;
	readonly spread: number;
	readonly emfSpread?: number;
	/** Of an output that guards itself: its limit while it drives, else `off`. */
	readonly limit?: Limit | "off";
}

/** Amperes either way, and what the branch becomes beyond them. */
export interface Limit {
	readonly amps: number;
	readonly awake: BranchState;
	readonly powered: BranchState;
}

export interface PinRole {
	readonly values: Readonly<Record<string, ValueRule>>;
	/** States a condition may set, the default first. */
	readonly states?: readonly string[];
	elements(pin: { value(name: string): number; state: string }): PinElement[];
}

const OPEN: BranchState = { siemens: 0, emf: 0 };
const ohm = (ohms: number, emf = 0): BranchState => ({ siemens: 1 / ohms, emf });

/** The same branch whatever the unit does. */
function always(name: string, state: BranchState, spread: number): PinElement {
	return { name, to: "ground", asleep: state, awake: state, powered: state, spread };
}

/** A source that works only when the unit is powered; else the same resistance to ground. */
function source(name: string, ohms: number, volts: number, volts_sd: number, spread = 0.1): PinElement {
	const off = ohm(ohms);
	return {
		name,
		to: "ground",
		asleep: off,
		awake: off,
		powered: ohm(ohms, volts),
		spread,
		emfSpread: volts_sd,
	};
}

const ohms = (fallback: number, source = PRACTICE) => value(fallback, "ohm", 1e-6, 1e9, source);
const volts = (fallback: number, source = PRACTICE) => value(fallback, "V", 0, 60, source);
const amps = (fallback: number) => value(fallback, "A", 1e-6, 1000, PRACTICE);

/** A leak that no meter sees but that keeps an output pin of a sleeping unit defined: 100 Mohm. */
const LEAK = ohm(1e8);

export const pinRoles: Readonly<Record<string, PinRole>> = {
	"sensor supply": {
		values: { volts: volts(5), ohms: ohms(0.5), limit_amps: amps(0.1), fold_ohms: ohms(1000) },
		elements: (pin) => [
			{
				...source("regulator", pin.value("ohms"), pin.value("volts"), 0.03),
				asleep: ohm(10000),
				awake: ohm(10000),
				limit: {
					amps: pin.value("limit_amps"),
					awake: ohm(10000),
					powered: ohm(pin.value("fold_ohms"), pin.value("volts")),
				},
			},
		],
	},
	"sensor return": {
		values: { ohms: ohms(0.05) },
		elements: (pin) => [always("return", ohm(pin.value("ohms")), 0.3)],
	},
	"input pull-up": {
		values: { pullup_ohms: ohms(2200), volts: volts(5) },
		elements: (pin) => [source("pull-up", pin.value("pullup_ohms"), pin.value("volts"), 0.03, 0.02)],
	},
	"input pull-down": {
		values: { pulldown_ohms: ohms(100000) },
		elements: (pin) => [always("pull-down", ohm(pin.value("pulldown_ohms")), 0.05)],
	},
	"low-side": {
		values: { on_ohms: ohms(0.2), limit_amps: amps(3), off_ohms: ohms(47000), diag_volts: volts(2.5) },
		states: ["off", "on"],
		elements: (pin) => {
			const on = pin.state === "on";
			const closed = ohm(pin.value("on_ohms"));
			const watching = ohm(pin.value("off_ohms"), pin.value("diag_volts"));
			return [
				{
					name: "output",
					to: "ground",
					asleep: LEAK,
					awake: on ? closed : LEAK,
					powered: on ? closed : watching,
					spread: 0.2,
					emfSpread: 0.1,
					limit: on ? { amps: pin.value("limit_amps"), awake: LEAK, powered: watching } : "off",
				},
			];
		},
	},
	"high-side": {
		values: { on_ohms: ohms(0.1), limit_amps: amps(6), off_ohms: ohms(47000) },
		states: ["off", "on"],
		elements: (pin) => {
			const off = ohm(pin.value("off_ohms"));
			const on = pin.state === "on";
			return [
				{ ...always("rest", off, 0.2) },
				{
					name: "output",
					to: "supply",
					asleep: OPEN,
					awake: OPEN,
					powered: on ? ohm(pin.value("on_ohms")) : OPEN,
					spread: 0.2,
					limit: on ? { amps: pin.value("limit_amps"), awake: OPEN, powered: OPEN } : "off",
				},
			];
		},
	},
	bridge: {
		values: { on_ohms: ohms(0.15), off_ohms: ohms(47000) },
		states: ["off", "high", "low"],
		elements: (pin) => {
			const closed = ohm(pin.value("on_ohms"));
			return [
				{ ...always("rest", ohm(pin.value("off_ohms")), 0.2) },
				{
					name: "upper half",
					to: "supply",
					asleep: OPEN,
					awake: OPEN,
					powered: pin.state === "high" ? closed : OPEN,
					spread: 0.2,
				},
				{
					name: "lower half",
					to: "ground",
					asleep: OPEN,
					awake: OPEN,
					powered: pin.state === "low" ? closed : OPEN,
					spread: 0.2,
				},
			];
		},
	},
	"bus high": busLine(4, "3.5 V at the pin into the bus of 60 ohm: from memory, ISO 11898-2"),
	"bus low": busLine(
		1,
		"1.5 V at the pin into the bus of 60 ohm: reference/electrical/can-physical-layer.csv row 013",
	),
	reference: {
		values: { volts: volts(0.45), ohms: ohms(50000) },
		elements: (pin) => [source("reference", pin.value("ohms"), pin.value("volts"), 0.02)],
	},
};

/** A bus line: 2.5 V behind a high resistance at rest, driven to its level when dominant. */
function busLine(dominantVolts: number, origin: string): PinRole {
	return {
		values: {
			ohms: ohms(25000),
			// With 4 and 1 V behind it, 60 ohm between the lines make the standard's 2 V.
			on_ohms: ohms(15),
			rest_volts: volts(2.5, "recessive 2.5 V: reference/electrical/can-physical-layer.csv row 011"),
			dominant_volts: volts(dominantVolts, origin),
		},
		states: ["recessive", "dominant"],
		elements: (pin) => {
			const dominant = pin.state === "dominant";
			const off = ohm(pin.value("ohms"));
			const powered = dominant
				? ohm(pin.value("on_ohms"), pin.value("dominant_volts"))
				: ohm(pin.value("ohms"), pin.value("rest_volts"));
			return [{ name: "line", to: "ground", asleep: off, awake: off, powered, spread: 0.2, emfSpread: 0.1 }];
		},
	};
}
