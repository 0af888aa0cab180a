/** Passive and three-wire sensors: all linear in the network, set by a number or a state. */
import { type DeviceKind, own, PRACTICE, value } from "./types.js";

const ZERO_CELSIUS = 273.15;

/**
 * Resistance in ohms of an NTC thermistor: R = R25 exp(B (1/T - 1/T25)), T in kelvin.
 * Checked against reference/electrical/ntc-tables.csv.
 */
export function thermistorOhms(ohms25: number, beta: number, celsius: number): number {
	return ohms25 * Math.exp(beta * (1 / (celsius + ZERO_CELSIUS) - 1 / (25 + ZERO_CELSIUS)));
}

export const thermistor: DeviceKind = {
	kind: "thermistor",
	title: "Temperature sensor (NTC)",
	roles: ["a", "b"],
	needs: ["a", "b"],
	repeats: false,
	values: {
		ohms_25: value(2252, "ohm", 1, 1e7, PRACTICE),
		beta: value(3900, "K", 100, 10000, PRACTICE),
	},
	states: () => ({ unit: "degrees C", min: -50, max: 250, default: 25 }),
	build(view, net) {
		const ohms = thermistorOhms(view.value("ohms_25"), view.value("beta"), Number(view.state));
		net.branch({
			a: view.pinOf("a")!,
			b: view.pinOf("b")!,
			siemens: 1 / ohms,
			spread: 0.05,
			owner: own(view.part, "element"),
		});
	},
};

const track = {
	low_percent: value(10, "%", 0.1, 99.9, PRACTICE),
	high_percent: value(90, "%", 0.1, 99.9, PRACTICE),
};

/** A three-wire ratiometric sensor: signal at a share of its supply, seen as a divider of `total` ohms. */
function divider(
	kind: string,
	title: string,
	total: (get: (name: string) => number) => number,
	rest: number,
	values: DeviceKind["values"],
): DeviceKind {
	return {
		kind,
		title,
		roles: ["supply", "return", "signal"],
		needs: ["supply", "return", "signal"],
		repeats: false,
		values: { ...values, ...track },
		states: () => ({ unit: "percent", min: 0, max: 100, default: rest }),
		build(view, net) {
			const low = view.value("low_percent") / 100;
			const high = view.value("high_percent") / 100;
			const share = low + ((high - low) * Number(view.state)) / 100;
			const ohms = total((name) => view.value(name));
			const signal = view.pinOf("signal")!;
			const upper = own(view.part, "track to supply");
			const lower = own(view.part, "track to return");
			net.branch({
				a: view.pinOf("supply")!,
				b: signal,
				siemens: 1 / (ohms * (1 - share)),
				spread: 0.03,
				owner: upper,
			});
			net.branch({
				a: signal,
				b: view.pinOf("return")!,
				siemens: 1 / (ohms * share),
				spread: 0.03,
				owner: lower,
			});
		},
	};
}

export const potentiometer = divider("potentiometer", "Potentiometer", (get) => get("ohms"), 0, {
	ohms: value(5000, "ohm", 10, 1e7, PRACTICE),
});

/** Its output stage holds the signal at a share of the supply: a stiff divider that draws the sensor's own current. */
export const ratioSensor = divider(
	"ratio sensor",
	"Three-wire sensor (ratiometric)",
	(get) => 5 / get("supply_amps"),
	50,
	{
		supply_amps: value(0.008, "A", 1e-5, 1, PRACTICE),
	},
);

export const hallSensor: DeviceKind = {
	kind: "hall sensor",
	title: "Hall sensor (open collector)",
	roles: ["supply", "return", "signal"],
	needs: ["supply", "return", "signal"],
	repeats: false,
	values: {
		supply_amps: value(0.006, "A", 1e-5, 1, PRACTICE),
		on_ohms: value(30, "ohm", 0.1, 1e4, PRACTICE),
	},
	states: () => ["open", "pulled down"],
	build(view, net) {
		const ground = view.pinOf("return")!;
		net.branch({
			a: view.pinOf("supply")!,
			b: ground,
			siemens: view.value("supply_amps") / 5,
			spread: 0.2,
			owner: own(view.part, "supply"),
		});
		net.branch({
			a: view.pinOf("signal")!,
			b: ground,
			siemens: view.state === "pulled down" ? 1 / view.value("on_ohms") : 0,
			spread: 0.2,
			owner: own(view.part, "output"),
		});
	},
};

export const lambdaSensor: DeviceKind = {
	kind: "lambda sensor",
	title: "Lambda sensor with heater",
	roles: ["signal", "return", "heater a", "heater b"],
	needs: ["signal", "return", "heater a", "heater b"],
	repeats: false,
	values: {
		volts: value(0.45, "V", 0, 2, PRACTICE),
		ohms: value(5000, "ohm", 1, 1e8, PRACTICE),
		heater_ohms: value(9, "ohm", 0.5, 100, PRACTICE),
	},
	states: () => ["fitted"],
	build(view, net) {
		net.branch({
			a: view.pinOf("signal")!,
			b: view.pinOf("return")!,
			siemens: 1 / view.value("ohms"),
			emf: view.value("volts"),
			spread: 0.3,
			emfSpread: 0.1,
			owner: own(view.part, "cell"),
		});
		net.branch({
			a: view.pinOf("heater a")!,
			b: view.pinOf("heater b")!,
			siemens: 1 / view.value("heater_ohms"),
			spread: 0.1,
			owner: own(view.part, "heater"),
		});
	},
};
