/** Devices that are a plain resistance between two pins. One table: they differ in name and defaults only. */
import { type DeviceKind, own, PRACTICE, type ValueRule, value } from "./types.js";

function twoPin(kind: string, title: string, ohms: ValueRule, spread: number): DeviceKind {
	return {
		kind,
		title,
		roles: ["a", "b"],
		needs: ["a", "b"],
		repeats: false,
		values: { ohms },
		states: () => ["fitted"],
		build(view, net) {
			net.branch({
				a: view.pinOf("a")!,
				b: view.pinOf("b")!,
				siemens: 1 / view.value("ohms"),
				spread,
				owner: own(view.part, "element"),
			});
		},
	};
}

const given = value(undefined, "ohm", 1e-4, 1e9, "the part's own figure");

export const resistor = twoPin("resistor", "Resistor", given, 0.01);
export const heater = twoPin("heater", "Heater", given, 0.1);
export const coil = twoPin("coil", "Coil or solenoid", given, 0.05);
export const injector = twoPin("injector", "Injector", value(12, "ohm", 0.1, 1e3, PRACTICE), 0.05);
export const motor = twoPin("motor", "Motor (at its working load)", given, 0.15);
export const igniter = twoPin(
	"igniter",
	"Pyrotechnic igniter (never measured)",
	value(2.2, "ohm", 0.1, 100, PRACTICE),
	0.1,
);
export const coilSensor = twoPin("coil sensor", "Two-wire sensor", given, 0.1);
