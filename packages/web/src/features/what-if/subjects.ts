/** What can be supposed to be another: wires, contacts, fuses and parts, joints, steps; each with the row that says it. */
import type { Loom, RecipeStep } from "@loomwright/engine";

export const SORTS = ["wires", "contacts", "parts", "joints", "recipe"] as const;
export type Sort = (typeof SORTS)[number];

export interface Subject {
	/** `wires/W170a` */
	readonly id: string;
	readonly name: string;
	readonly text: string;
	/** The row that says what it is. */
	readonly row: { readonly table: string; readonly row: string };
}

interface CarTables {
	readonly delivered: Loom;
	readonly converted: Loom;
	readonly recipe: readonly RecipeStep[];
}

/** Those of one sort in the loom as converted, in the order of the tables. */
export function subjectsOf({ delivered, converted, recipe }: CarTables, sort: Sort): Subject[] {
	const subject = (name: string, text: string, table: string, row = name): Subject => ({
		...{ id: `${sort}/${name}`, name, text },
		row: { table, row },
	});
	switch (sort) {
		case "wires":
			return [...converted.wires.values()].map(({ id, mm2, circuit, bundle }) => {
				const { table, row } = rowOfWire(id, delivered, recipe);
				return subject(id, [`${mm2} mm²`, circuit, bundle].filter(Boolean).join(", "), table, row);
			});
		case "contacts":
			return [...converted.contacts.values()].map(({ id, part, connector, cavity, label, role }) => {
				const seat = connector === "" ? "" : `${connector} cavity ${cavity}`;
				const words = [seat, converted.parts.get(part)?.label ?? "", label || role];
				const table = delivered.contacts.has(id) ? "contacts" : "new-contacts";
				return subject(id, words.filter(Boolean).join(", "), table);
			});
		case "parts":
			return [...converted.parts.values()].map(({ id, kind, label, place }) => {
				const table = delivered.parts.has(id) ? "parts" : "new-parts";
				return subject(id, [kind, label, place].filter(Boolean).join(", "), table);
			});
		case "joints":
			return [...converted.joints.values()]
				.filter(({ id }) => delivered.joints.has(id) || !madeBy(id, recipe))
				.map(({ id, kind, label, place }) => {
					const table = delivered.joints.has(id) ? "joints" : "new-joints";
					return subject(id, [kind, label, place].filter(Boolean).join(", "), table);
				});
		case "recipe":
			return recipe.map(({ step, kind, title, place }) =>
				subject(step, [title || kind, place].filter(Boolean).join(", "), "recipe"),
			);
	}
}

/** A wire that a step makes is said in that step; what a cut leaves of one, where the whole wire is said. */
function rowOfWire(
	id: string,
	delivered: Loom,
	recipe: readonly RecipeStep[],
): { readonly table: string; readonly row: string } {
	if (delivered.wires.has(id)) return { table: "wires", row: id };
	const maker = recipe.find(({ fresh }) => fresh === id);
	if (maker && maker.kind !== "cut" && maker.kind !== "join") return { table: "recipe", row: maker.step };
	const whole = maker ? (maker.kind === "join" ? maker.other : maker.wire) : id.replace(/\+b$/, "");
	return whole === id ? { table: "wires", row: id } : rowOfWire(whole, delivered, recipe);
}

/** A splice that a step makes has no row of its own. */
const madeBy = (joint: string, recipe: readonly RecipeStep[]): boolean =>
	recipe.some((step) => step.joint === joint);

/** Cells that one would want to suppose another in, by table, with what they are in words. */
export const CELLS: Readonly<Record<string, Readonly<Record<string, string>>>> = {
	wires: { size: "Size", from: "From", to: "To", length: "Length", bundle: "Bundle", marks: "Marks" },
	contacts: { cavity: "Cavity", connector: "Connector", values: "Values", role: "Role" },
	"new-contacts": { cavity: "Cavity", connector: "Connector", values: "Values", role: "Role" },
	parts: { values: "Values", positions: "Positions", duty: "Duty" },
	"new-parts": { values: "Values", positions: "Positions", duty: "Duty" },
	joints: { ohms: "Ohms", metal: "Metal", place: "Place" },
	"new-joints": { ohms: "Ohms", metal: "Metal", place: "Place" },
	recipe: {
		to: "To",
		from: "From",
		wire: "Wire",
		other: "Other wire",
		at: "At",
		size: "Size",
		length: "Length",
		joint: "Joint",
		minutes: "Minutes",
	},
};

/** Road-vehicle cable in mm2 that a shop has. */
export const SIZES = ["0.35", "0.5", "0.75", "1", "1.5", "2.5", "4", "6", "10", "16", "25"];
