import fc from "fast-check";
import { COLOURS } from "../units/index.js";
import type { NewParts, RecipeStep, RecipeTable } from "./recipe-row.js";
import type { Contact, Joint, Loom, Part, Quantity, Wire, WireEnd } from "./types.js";
import { DUTIES, MARKS } from "./words.js";

/** Free text as it can stand in a cell: without white space at its ends, which cells do not keep. */
const words = fc
	.oneof(fc.string({ maxLength: 8 }), fc.constantFrom('5" hose', "a, b", "two\nlines", "ü;ö", "=1", "😀"))
	.map((text) => text.trim());
const word = words.filter((text) => text !== "");
const number = fc.double({ noNaN: true, noDefaultInfinity: true }).map((value) => value || 0);
const positive = fc.double({ min: 0.01, max: 90, noNaN: true });
const values = fc.dictionary(fc.constantFrom("ohms", "volts", "hot_ohms"), number, { noNullPrototype: true });
const marks = fc.uniqueArray(fc.constantFrom(...MARKS), { maxLength: 2 });
const colours = fc.uniqueArray(fc.constantFrom(...COLOURS.map((colour) => colour.code)), { maxLength: 3 });
const role = fc.constantFrom("a", "b", "30", "87a", "sensor supply");
const position = fc.record({
	name: fc.constantFrom("off", "run", "2 up"),
	joins: fc.array(fc.constantFrom<readonly [string, string]>(["30", "15"], ["30", "50"], ["in", "out 2"]), {
		maxLength: 2,
	}),
});
const car = fc.constantFrom("" as const, "delivered" as const, "converted" as const);

const partText = fc.record({
	label: words,
	place: words,
	duty: fc.constantFrom("", ...DUTIES),
	values,
	positions: fc.uniqueArray(position, { maxLength: 3, selector: ({ name }) => name }),
	marks,
	reachMinutes: fc.option(positive, { nil: undefined }),
	note: words,
});
const contactText = fc.record({ role, values, label: words, note: words });
const jointText = fc.record({
	kind: fc.constantFrom<Joint["kind"]>("splice", "ground", "bar"),
	label: words,
	place: words,
	ohms: fc.option(positive, { nil: undefined }),
	marks,
	note: words,
});
const wireText = fc.record({
	mm2: positive,
	colours,
	metres: positive,
	circuit: words,
	pair: words,
	bundle: words,
	marks,
	note: words,
});

/** Parts named `<letter>0`, `<letter>1` ... with up to three contacts each, some in the housing `<letter>X`. */
function partsOf(letter: string) {
	const contacts = fc.array(fc.record({ text: contactText, seated: fc.boolean() }), { maxLength: 3 });
	return fc.array(fc.record({ text: partText, kind: word, contacts }), { maxLength: 4 }).map((drafts) => {
		const housing = `${letter}X`;
		const parts = new Map<string, Part>();
		const pins = new Map<string, Contact>();
		const plain = { label: "", place: "", duty: "", values: {}, positions: [], marks: [], note: "" };
		parts.set(housing, { ...plain, id: housing, kind: "connector" });
		drafts.forEach(({ text, kind, contacts: drawn }, at) => {
			const part = `${letter}${at}`;
			parts.set(part, { ...text, id: part, kind: kind === "connector" ? "relay" : kind });
			for (const [pin, { text: rest, seated }] of drawn.entries()) {
				const seat = { connector: seated ? housing : "", cavity: seated ? String(pins.size) : "" };
				pins.set(`${part}.${pin}`, { id: `${part}.${pin}`, part, ...seat, ...rest });
			}
		});
		return { parts, contacts: pins };
	});
}

function jointsOf(letter: string) {
	return fc.array(jointText, { minLength: 1, maxLength: 3 }).map(
		(drafts) =>
			new Map<string, Joint>(
				drafts.map((text, at) => {
					const id = `${letter}J-${at}/+`;
					return [id, { id, metal: text.kind === "ground" ? "engine" : "", ...text }];
				}),
			),
	);
}

/** One wire per place, each from that place to a loose end or the first joint. */
function wiresOf(places: readonly WireEnd[], joint: WireEnd) {
	const drafts = fc.array(fc.record({ text: wireText, insulated: fc.boolean(), joined: fc.boolean() }), {
		minLength: places.length,
		maxLength: places.length,
	});
	return drafts.map(
		(drawn) =>
			new Map<string, Wire>(
				drawn.map(({ text, insulated, joined }, at) => {
					const from = places[at]!;
					const to: WireEnd = joined && from.at === "contact" ? joint : { at: "loose", insulated };
					return [`W${at}`, { id: `W${at}`, from, to, ...text }];
				}),
			),
	);
}

const step = fc.record<Omit<RecipeStep, "step" | "row">>({
	kind: word,
	title: words,
	wire: words,
	other: words,
	at: fc.oneof(
		fc.constantFrom("from" as const, "to" as const, undefined),
		positive.map((metres) => ({ metres })),
	),
	from: words,
	to: words,
	part: words,
	fresh: fc.constantFrom("", "W1+b"),
	joint: fc.constantFrom("", "SP-1"),
	mm2: fc.option(positive, { nil: undefined }),
	colours,
	metres: fc.option(positive, { nil: undefined }),
	circuit: words,
	pair: words,
	bundle: words,
	place: words,
	minutes: fc.option(positive, { nil: undefined }),
	note: words,
});

const recipeRows: fc.Arbitrary<RecipeTable> = fc
	.array(step, { maxLength: 3 })
	.map((steps) => steps.map((rest, at) => ({ ...rest, step: String(10 * at), row: at + 2 })));

/** Conditions, monitors and functions over the contacts and parts that there are. */
function asksOf(parts: readonly string[], contacts: readonly string[]) {
	const settings = fc.dictionary(fc.constantFrom(...parts, ...contacts), word, {
		minKeys: 1,
		maxKeys: 3,
		noNullPrototype: true,
	});
	const conditions = fc.array(fc.record({ title: words, settings, like: fc.boolean() }), {
		minLength: 1,
		maxLength: 3,
	});
	const window = fc.tuple(number, number).map((pair) => pair.toSorted((a, b) => a - b));
	const quantity: fc.Arbitrary<Quantity> = fc.record({
		measures: fc.constantFrom("volts" as const, "amps" as const),
		contact: fc.constantFrom(...contacts, `${contacts[0]}!pin`),
		reference: fc.constantFrom(...contacts),
	});
	const monitors = fc.array(
		fc.record({
			quantity,
			code: word,
			title: words,
			note: words,
			window,
			ratio: number,
			twin: fc.boolean(),
			of: car,
		}),
		{ maxLength: 2 },
	);
	const functions = fc.array(fc.record({ quantity, function: word, title: words, window, of: car }), {
		maxLength: 2,
	});
	return fc.record({ conditions, monitors, functions }).map((drawn) => ({
		conditions: new Map(
			drawn.conditions.map(({ title, settings: set, like }, at) => {
				const id = `c ${at}`;
				return [
					id,
					{ id, title, like: like && at > 0 ? `c ${at - 1}` : "", settings: new Map(Object.entries(set)) },
				];
			}),
		),
		monitors: drawn.monitors.map(({ quantity: q, window: [below, above], ratio, twin, ...rest }) => ({
			...rest,
			...q,
			unit: parts[0]!,
			when: "c 0",
			twin: twin ? contacts[0]! : "",
			ratio: twin ? ratio : 1,
			below,
			above,
		})),
		functions: drawn.functions.map(({ quantity: q, window: [low, high], ...rest }) => ({
			...rest,
			...q,
			when: "c 0",
			low,
			high,
		})),
	}));
}

/** A sound loom with a recipe and new parts, to write and read again. */
export function someTables(): fc.Arbitrary<{ loom: Loom; recipe: RecipeTable; newParts: NewParts }> {
	const fresh = fc.record({ pins: partsOf("N"), joints: jointsOf("N") });
	return fc
		.record({ pins: partsOf("P"), joints: jointsOf("D"), fresh, recipe: recipeRows })
		.filter(({ pins }) => pins.contacts.size > 0)
		.chain(({ pins, joints, fresh: { pins: newPins, joints: newJoints }, recipe }) => {
			const places: WireEnd[] = [
				...[...pins.contacts.keys()].map((contact): WireEnd => ({ at: "contact", contact })),
				...[...joints.keys()].map((joint): WireEnd => ({ at: "joint", joint })),
			];
			const wires = wiresOf(places, places.at(-1)!);
			const contacts = [...pins.contacts.keys(), ...newPins.contacts.keys()];
			const asks = asksOf([...pins.parts.keys(), ...newPins.parts.keys()], contacts);
			return fc.record({ wires, asks }).map(({ wires: drawn, asks: asked }) => ({
				loom: { name: "some", ...pins, joints, wires: drawn, ...asked },
				recipe,
				newParts: { ...newPins, joints: newJoints },
			}));
		});
}
