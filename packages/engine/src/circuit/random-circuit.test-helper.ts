/** Small random looms of batteries, resistors and switches on joints, some in pieces, for properties of circuits. */
import fc from "fast-check";
import type { Contact, Joint, Loom, Part, Position, Wire, WireEnd } from "../loom/index.js";

export interface RandomCircuit {
	readonly loom: Loom;
	/** The one condition of the loom. */
	readonly when: string;
	readonly joints: readonly string[];
}

const WHEN = "now";

const ohms = fc.double({ min: -2, max: 5, noNaN: true }).map((power) => 10 ** power);
const place = fc.nat({ max: 99 });
const lead = fc.record({
	mm2: fc.constantFrom(0.35, 1, 2.5, 16),
	metres: fc.double({ min: 0.001, max: 5, noNaN: true }),
});
/** A two-pin part and where it hangs; `place` is taken modulo the number of joints. */
const part = fc.record({
	draw: fc.oneof(
		{ weight: 6, arbitrary: ohms.map((value) => ({ kind: "resistor", value, on: true })) },
		{
			weight: 2,
			arbitrary: fc.record({
				kind: fc.constant("battery"),
				value: fc.double({ min: 1, max: 24, noNaN: true }),
				on: fc.boolean(),
			}),
		},
		{
			weight: 2,
			arbitrary: fc.record({ kind: fc.constant("switch"), value: fc.constant(0), on: fc.boolean() }),
		},
	),
	from: place,
	to: place,
	out: lead,
	back: lead,
});
const link = fc.record({ from: place, to: place, lead });
const jointKind = fc.constantFrom<Joint["kind"]>("splice", "splice", "splice", "bar", "ground");

const ROLES: Readonly<Record<string, readonly [string, string]>> = {
	resistor: ["a", "b"],
	battery: ["+", "-"],
	switch: ["1", "2"],
};
const POSITIONS: readonly Position[] = [
	{ name: "off", joins: [] },
	{ name: "on", joins: [["1", "2"]] },
];

export const randomCircuit: fc.Arbitrary<RandomCircuit> = fc
	.record({
		kinds: fc.array(jointKind, { minLength: 2, maxLength: 8 }),
		parts: fc.array(part, { minLength: 1, maxLength: 14 }),
		links: fc.array(link, { maxLength: 3 }),
	})
	.map(({ kinds, parts: drawn, links }) => {
		const text = { label: "", place: "", note: "", marks: [] };
		const joints = new Map(
			kinds.map((kind, k): [string, Joint] => [
				`J${k}`,
				{ ...text, id: `J${k}`, kind, ohms: undefined, metal: kind === "ground" ? "body" : "" },
			]),
		);
		const at = (k: number): WireEnd => ({ at: "joint", joint: `J${k % kinds.length}` });
		const parts = new Map<string, Part>();
		const contacts = new Map<string, Contact>();
		const wires = new Map<string, Wire>();
		const settings = new Map<string, string>();
		const wire = (id: string, from: WireEnd, to: WireEnd, of: { mm2: number; metres: number }) =>
			wires.set(id, { ...text, ...of, id, from, to, colours: [], circuit: "", pair: "", bundle: "" });
		drawn.forEach(({ draw, from, to, out, back }, k) => {
			const id = `P${k}`;
			const values: Record<string, number> =
				draw.kind === "resistor"
					? { ohms: draw.value }
					: draw.kind === "battery"
						? { volts: draw.value, ohms: 0.01 }
						: {};
			const positions = draw.kind === "switch" ? POSITIONS : [];
			parts.set(id, { ...text, id, kind: draw.kind, duty: "", values, positions });
			if (draw.kind !== "resistor") settings.set(id, draw.on ? "on" : "off");
			ROLES[draw.kind]!.forEach((role, pin) => {
				const contact = `${id}.${pin + 1}`;
				contacts.set(contact, {
					id: contact,
					part: id,
					connector: "",
					cavity: "",
					role,
					values: {},
					label: "",
					note: "",
				});
				wire(
					`${id}-W${pin + 1}`,
					{ at: "contact", contact },
					at(pin === 0 ? from : to),
					pin === 0 ? out : back,
				);
			});
		});
		links.forEach((of, k) => {
			// The tables take no wire with both ends in one joint.
			const on = of.to % kinds.length === of.from % kinds.length ? of.from + 1 : of.to;
			wire(`L${k}`, at(of.from), at(on), of.lead);
		});
		// A joint that no wire reached is left out.
		const ends = new Set(
			[...wires.values()].flatMap(({ from, to }) => [from, to].map((e) => (e.at === "joint" ? e.joint : ""))),
		);
		for (const id of joints.keys()) if (!ends.has(id)) joints.delete(id);
		const condition = { id: WHEN, title: "", like: "", settings };
		const loom: Loom = {
			name: "random",
			parts,
			contacts,
			wires,
			joints,
			conditions: new Map([[WHEN, condition]]),
			monitors: [],
			functions: [],
		};
		return { loom, when: WHEN, joints: [...joints.keys()] };
	});

/** Two numbers to pick things by, modulo their count. */
export const picks = fc.tuple(place, place, place, place);
