/** Checks a loom against its device kinds: kinds, roles, settings, states. All faults at once, each with its row. */
import type { Contact, Loom, LoomTables, Part, RowKind } from "../loom/index.js";
import type { TableError } from "../tables/index.js";
import { deviceKinds } from "./index.js";
import type { DeviceKind, ValueRule } from "./types.js";

type Report = (kind: RowKind, id: string, column: string, problem: string, wanted: string) => void;

/** Every fault of the read tables that only the device kinds can know. Shapes and order as `LoomTables.errors`. */
export function checkDevices(tables: LoomTables): TableError[] {
	const found: { rank: number; error: TableError }[] = [];
	const { delivered } = tables;
	/** Place of a row's table among the tables: parts, contacts, conditions, new parts, new contacts. */
	const rankOf = (kind: RowKind, id: string) => {
		if (kind === "setting") return 2;
		const fresh = delivered.parts.has(id) || delivered.contacts.has(id) ? 0 : 3;
		return fresh + (kind === "contact" ? 1 : 0);
	};
	const report = (
		kind: RowKind,
		id: string,
		column: string,
		problem: string,
		wanted: string,
		within?: string,
	) => {
		const place = tables.locate(kind, id, within) ?? { file: "tables", row: 0 };
		found.push({ rank: rankOf(kind, id), error: { ...place, column, problem, wanted } });
	};
	const parts = new Map([...delivered.parts, ...tables.newParts.parts]);
	const contacts = new Map([...delivered.contacts, ...tables.newParts.contacts]);
	const byPart = new Map([...parts.keys()].map((id): [string, Contact[]] => [id, []]));
	for (const contact of contacts.values()) byPart.get(contact.part)?.push(contact);
	for (const part of parts.values()) checkPart(part, byPart.get(part.id) ?? [], report);
	for (const condition of delivered.conditions.values())
		for (const [subject, state] of condition.settings) {
			const wrong = stateFault({ parts, contacts }, subject, state);
			if (wrong)
				report("setting", subject, "state", `'${state}' is no state of ${subject}`, wrong, condition.id);
		}
	return found.toSorted((x, y) => x.rank - y.rank || x.error.row - y.error.row).map(({ error }) => error);
}

function checkPart(part: Part, contacts: readonly Contact[], report: Report): void {
	const kind = deviceKinds.get(part.kind);
	if (kind === undefined) {
		report(
			"part",
			part.id,
			"kind",
			`'${part.kind}' is not a kind of device`,
			`one of: ${[...deviceKinds.keys()].join(", ")}`,
		);
		return;
	}
	checkValues("part", part.id, part.values, kind.values, report);
	for (const name of Object.keys(kind.values))
		if (kind.values[name]!.default === undefined && part.values[name] === undefined)
			report("part", part.id, "values", `a ${part.kind} needs '${name}'`, `for example ${name}=1`);
	checkRoles(kind, part, contacts, report);
	if (part.kind === "switch" && part.positions.length === 0)
		report("part", part.id, "positions", "a switch needs its positions", "for example off:; on:1-2");
	for (const position of part.positions)
		for (const role of position.joins.flat())
			if (!contacts.some((c) => c.role === role))
				report(
					"part",
					part.id,
					"positions",
					`no contact of ${part.id} has the role '${role}'`,
					`one of: ${contacts.map((c) => c.role).join(", ")}`,
				);
}

function checkRoles(kind: DeviceKind, part: Part, contacts: readonly Contact[], report: Report): void {
	const seen = new Map<string, string>();
	for (const contact of contacts) {
		const rules = kind.pinValues?.[contact.role] ?? {};
		checkValues("contact", contact.id, contact.values, rules, report);
		if (kind.roles !== "any" && !kind.roles.includes(contact.role))
			report(
				"contact",
				contact.id,
				"role",
				`a ${kind.kind} has no '${contact.role}'`,
				`one of: ${kind.roles.join(", ")}`,
			);
		const first = seen.get(contact.role);
		if (first !== undefined && !kind.repeats)
			report(
				"contact",
				contact.id,
				"role",
				`${part.id} has '${contact.role}' already: ${first}`,
				"each role once",
			);
		seen.set(contact.role, contact.id);
	}
	for (const role of kind.needs)
		if (!seen.has(role))
			report(
				"part",
				part.id,
				"kind",
				`a ${kind.kind} needs a contact '${role}'`,
				`a row in contacts.csv with part ${part.id} and role ${role}`,
			);
}

function checkValues(
	row: RowKind,
	id: string,
	values: Readonly<Record<string, number>>,
	rules: Readonly<Record<string, ValueRule>>,
	report: Report,
): void {
	for (const [name, value] of Object.entries(values)) {
		const rule = rules[name];
		if (rule === undefined) {
			const known = Object.keys(rules).join(", ") || "none here";
			report(row, id, "values", `'${name}' is not a setting of it`, `one of: ${known}`);
		} else if (!(value >= rule.min && value <= rule.max))
			report(
				row,
				id,
				"values",
				`${name}=${value} is out of range`,
				`${rule.min} to ${rule.max} ${rule.unit}`,
			);
	}
}

/** What a state of a part or contact should have been, or undefined when it is right or the subject not known. */
export function stateFault(
	{ parts, contacts }: Pick<Loom, "parts" | "contacts">,
	subject: string,
	state: string,
): string | undefined {
	const part = parts.get(subject);
	const contact = contacts.get(subject);
	const kind = deviceKinds.get(part?.kind ?? parts.get(contact?.part ?? "")?.kind ?? "");
	if (kind === undefined) return undefined;
	const states = part ? kind.states(part) : (kind.pinStates?.(contact!) ?? ["as it is"]);
	if (!("unit" in states)) return states.includes(state) ? undefined : `one of: ${states.join(", ")}`;
	const number = state.trim() === "" ? Number.NaN : Number(state);
	if (number >= states.min && number <= states.max) return undefined;
	return `a number from ${states.min} to ${states.max} (${states.unit})`;
}
