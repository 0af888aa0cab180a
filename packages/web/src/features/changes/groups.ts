/** Differences of the two looms in groups: one per connector, then what has none. */
import type { Change, Loom } from "@loomwright/engine";

export interface Group {
	/** Connector, part, or a word for what has neither. */
	readonly id: string;
	readonly label: string;
	readonly place: string;
	readonly changes: readonly Change[];
}

const SPLICES = "Splices and ground points";
const WIRES = "Wires between splices";

export function groupChanges(changes: readonly Change[], delivered: Loom, converted: Loom): Group[] {
	const groups = new Map<string, Change[]>();
	for (const change of changes) {
		const id = groupOf(change);
		groups.set(id, [...(groups.get(id) ?? []), change]);
	}
	const part = (id: string) => converted.parts.get(id) ?? delivered.parts.get(id);
	return [...groups].map(([id, list]) => ({
		id,
		label: part(id)?.label ?? "",
		place: part(id)?.place ?? "",
		changes: list,
	}));
}

function groupOf({ connector, part, joint }: Change): string {
	if (connector !== "") return connector;
	if (part !== "") return part;
	return joint === "" ? WIRES : SPLICES;
}

/** Groups that have the text in a name, a label, a place or a change. */
export function filterGroups(groups: readonly Group[], text: string, place: string): Group[] {
	const wanted = text.trim().toLowerCase();
	const has = (...texts: readonly string[]) => texts.some((t) => t.toLowerCase().includes(wanted));
	return groups.flatMap((group) => {
		if (place !== "" && group.place !== place) return [];
		if (wanted === "" || has(group.id, group.label, group.place)) return [group];
		const changes = group.changes.filter((change) => has(change.text));
		return changes.length > 0 ? [{ ...group, changes }] : [];
	});
}

export const placesOf = (groups: readonly { readonly place: string }[]): string[] =>
	[...new Set(groups.map(({ place }) => place))].filter(Boolean).sort((a, b) => a.localeCompare(b));
