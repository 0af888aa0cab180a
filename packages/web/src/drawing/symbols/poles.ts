/** The poles of a switch: contacts that some position joins with each other, and which of them is the common one. */
import type { SheetPart, SheetPort } from "../sheet/types.js";

export interface Pole {
	readonly common: SheetPort;
	readonly throws: readonly SheetPort[];
	closedIn(position: string, port: SheetPort): boolean;
}

type Join = readonly [string, string];

/** Contacts that no position joins are a pole each, without a throw. */
export function polesOf(part: SheetPart): Pole[] {
	const joins = part.positions.flatMap((position) => position.joins);
	const left = new Set(part.ports);
	const poles: Pole[] = [];
	for (const start of part.ports) {
		if (!left.has(start)) continue;
		const group = reach(start, [...left], joins);
		for (const port of group) left.delete(port);
		poles.push(poleOf(part, group, joins));
	}
	return poles;
}

function reach(start: SheetPort, ports: readonly SheetPort[], joins: readonly Join[]): SheetPort[] {
	const group = [start];
	for (const port of group)
		for (const [a, b] of joins) {
			const next = a === port.role ? b : b === port.role ? a : undefined;
			const found = ports.find((p) => p.role === next && !group.includes(p));
			if (found) group.push(found);
		}
	return group;
}

/** The common contact is the one in most joins; of equals the first. */
function poleOf(part: SheetPart, group: readonly SheetPort[], joins: readonly Join[]): Pole {
	const count = ({ role }: SheetPort) =>
		new Set(joins.filter((j) => j.includes(role)).map((j) => j.join())).size;
	const common = group.reduce((a, b) => (count(b) > count(a) ? b : a));
	const throws = part.ports.filter((port) => port !== common && group.includes(port));
	return {
		common,
		throws,
		closedIn: (name, { role }) =>
			part.positions
				.find((position) => position.name === name)
				?.joins.some((join) => join.includes(role) && join.includes(common.role)) ?? false,
	};
}
