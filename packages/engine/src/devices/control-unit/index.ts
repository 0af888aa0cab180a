/**
 * Control unit: what each pin is to the network, and when the unit is awake and powered.
 *
 * States: asleep; awake (wake line up: its low-side outputs work, so it can pull in its own main relay);
 * powered (awake and its first supply up: everything works).
 */
import type { Contact } from "../../loom/index.js";
import type { BranchState, DeviceKind, DeviceView, NetworkBuilder } from "../types.js";
import { own, PRACTICE, value } from "../types.js";
import { type PinElement, pinRoles } from "./pins.js";

const ASLEEP = 0;
const AWAKE = 1;
const POWERED = 2;

/** Adds the elements of one pin and collects what the unit's power decides of them. */
function addPin(
	view: DeviceView,
	net: NetworkBuilder,
	contact: Contact,
	element: PinElement,
	decided: { branch: number; states: readonly BranchState[] }[],
	points: Points,
): void {
	const pin = net.pin(contact.id);
	const other = element.to === "supply" ? points.supply : points.ground;
	const spread = element.spread;
	const owner = own(view.part, `${contact.id} ${element.name}`);
	const states = [element.asleep, element.awake, element.powered];
	const emfSpread = element.emfSpread ?? 0;
	const branch = net.branch({ a: pin, b: other, ...element.asleep, spread, emfSpread, owner });
	const [asleep, awake, powered] = states;
	const same = (x: BranchState, y: BranchState) => x.siemens === y.siemens && x.emf === y.emf;
	if (!same(asleep!, awake!) || !same(asleep!, powered!))
		decided.push({ branch, states: states as BranchState[] });
}

interface Points {
	readonly ground: string;
	readonly supply: string;
}

function addOwnDraw(view: DeviceView, net: NetworkBuilder, points: Points): void {
	// The unit's own consumption, seen as a resistance at 12 V; a further supply pin draws a tenth.
	const amps = view.value("amps");
	view.withRole("supply").forEach((contact, index) => {
		const siemens = (index === 0 ? amps : amps / 10) / 12;
		const owner = own(view.part, `${contact.id} draw`);
		net.branch({ a: net.pin(contact.id), b: points.ground, siemens, spread: 0.4, owner });
	});
}

export const controlUnit: DeviceKind = {
	kind: "control unit",
	title: "Control unit",
	roles: [...Object.keys(pinRoles), "supply", "wake", "ground", "unused"],
	needs: ["supply", "ground"],
	repeats: true,
	values: {
		min_volts: value(6, "V", 1, 60, PRACTICE),
		amps: value(0.3, "A", 1e-4, 100, PRACTICE),
	},
	pinValues: {
		...Object.fromEntries(Object.entries(pinRoles).map(([role, r]) => [role, r.values])),
		wake: { volts: value(6, "V", 0.5, 60, PRACTICE), ohms: value(10000, "ohm", 10, 1e7, PRACTICE) },
		ground: { ohms: value(0.002, "ohm", 1e-6, 1, PRACTICE) },
	},
	states: () => ["fitted"],
	pinStates: (contact) => pinRoles[contact.role]?.states ?? ["as it is"],
	build(view, net) {
		const { part } = view;
		const points = { ground: net.inside(part.id, "ground"), supply: view.pinOf("supply")! };
		for (const contact of view.withRole("ground"))
			net.branch({
				a: net.pin(contact.id),
				b: points.ground,
				siemens: 1 / view.pinValue(contact, "ohms"),
				spread: 0.3,
				owner: own(part, `${contact.id} ground`),
			});
		addOwnDraw(view, net, points);
		const wakes = view.withRole("wake");
		for (const contact of wakes) {
			const siemens = 1 / view.pinValue(contact, "ohms");
			const owner = own(part, `${contact.id} wake`);
			net.branch({ a: net.pin(contact.id), b: points.ground, siemens, spread: 0.2, owner });
		}
		const decided: { branch: number; states: readonly BranchState[] }[] = [];
		for (const [role, rule] of Object.entries(pinRoles))
			for (const contact of view.withRole(role))
				for (const element of rule.elements({
					value: (name) => view.pinValue(contact, name),
					state: view.pinState(contact),
				}))
					addPin(view, net, contact, element, decided, points);
		const enough = view.value("min_volts");
		const wakeVolts = wakes.map((contact) => view.pinValue(contact, "volts"));
		net.automaton({
			part: part.id,
			element: "power",
			states: ["asleep", "awake", "powered"],
			branches: decided.map((d) => d.branch),
			table: [ASLEEP, AWAKE, POWERED].map((state) => decided.map((d) => d.states[state]!)),
			watch: [
				[points.supply, points.ground],
				...wakes.map((c): [string, string] => [net.pin(c.id), points.ground]),
			],
			next(_state, [supply = 0, ...wake]) {
				const called = wakes.length === 0 || wake.some((volts, k) => volts >= wakeVolts[k]!);
				if (!called) return ASLEEP;
				if (supply >= enough) return POWERED;
				return wakes.length > 0 ? AWAKE : ASLEEP;
			},
		});
	},
};
