/** Control unit: what each pin is to the network, as the unit's power and the pins' own limits decide. */
import type { Contact } from "../../loom/index.js";
import type { BranchState, DeviceKind, DeviceView, NetworkBuilder } from "../types.js";
import { own, PRACTICE, value } from "../types.js";
import { limitAutomaton } from "./limit.js";
import { type PinElement, pinRoles } from "./pins.js";
import { POWER_STATES, powerOf } from "./power.js";

export { isLimited } from "./limit.js";

/** A pin's element with its branch. */
interface Placed {
	readonly contact: Contact;
	readonly element: PinElement;
	readonly branch: number;
	/** The far end: the unit's ground or supply. */
	readonly other: string;
	/** Whether it is another in some state of the unit or of the pin. */
	readonly switched: boolean;
}

interface Points {
	readonly ground: string;
	readonly supply: string;
}

const same = (x: BranchState, y: BranchState) => x.siemens === y.siemens && x.emf === y.emf;
const powerDecides = ({ asleep, awake, powered }: PinElement) =>
	!same(asleep, awake) || !same(asleep, powered);
const elementName = ({ contact, element }: Placed) => `${contact.id} ${element.name}`;

function addPins(view: DeviceView, net: NetworkBuilder, points: Points): Placed[] {
	return Object.entries(pinRoles).flatMap(([role, rule]) =>
		view.withRole(role).flatMap((contact) =>
			rule
				.elements({ value: (name) => view.pinValue(contact, name), state: view.pinState(contact) })
				.map((element): Placed => {
					const other = points[element.to];
					const { spread, emfSpread = 0 } = element;
					const owner = own(view.part, `${contact.id} ${element.name}`);
					const a = net.pin(contact.id);
					const branch = net.branch({ a, b: other, ...element.asleep, spread, emfSpread, owner });
					const switched = rule.states !== undefined || powerDecides(element);
					return { contact, element, branch, other, switched };
				}),
		),
	);
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
		for (const contact of view.withRole("wake")) {
			const siemens = 1 / view.pinValue(contact, "ohms");
			const owner = own(part, `${contact.id} wake`);
			net.branch({ a: net.pin(contact.id), b: points.ground, siemens, spread: 0.2, owner });
		}
		const pins = addPins(view, net, points);
		const power = powerOf(view, net, points.supply, points.ground);
		const decided = pins.filter(
			({ element }) => powerDecides(element) && (element.limit === undefined || element.limit === "off"),
		);
		net.automaton({
			part: part.id,
			element: "power",
			states: POWER_STATES,
			branches: decided.map(({ branch }) => branch),
			table: [
				decided.map(({ element }) => element.asleep),
				decided.map(({ element }) => element.awake),
				decided.map(({ element }) => element.powered),
			],
			watch: power.watch,
			next: (_state, volts) => power.of(volts, 0),
			slack: (_state, volts) => power.slack(volts),
			idle: new Map(pins.filter((pin) => pin.switched).map((pin) => [pin.branch, pin.element.asleep])),
		});
		for (const pin of pins)
			if (pin.element.limit !== undefined)
				net.automaton(
					limitAutomaton(
						{
							part: part.id,
							element: elementName(pin),
							branch: pin.branch,
							across: [net.pin(pin.contact.id), pin.other],
						},
						pin.element,
						power,
					),
				);
	},
};
