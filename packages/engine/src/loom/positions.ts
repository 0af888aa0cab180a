import { parseList } from "../tables/index.js";
import { bad, good, type Parsed } from "../units/index.js";
import type { Position } from "./types.js";

const WANTED = "positions with the pairs of roles joined in each, e.g. off:; run:30-15; start:30-15,30-50";

/** Positions of a switch, the one at rest first: `off:; run:30-15; start:30-15,30-50`. */
export function parsePositions(text: string): Parsed<readonly Position[]> {
	const positions: Position[] = [];
	for (const word of parseList(text)) {
		const colon = word.indexOf(":");
		const name = word.slice(0, Math.max(colon, 0)).trim();
		if (name === "") return bad(`"${word}" is not a position of a switch`, WANTED);
		if (positions.some((known) => known.name === name)) {
			return bad(
				`the position "${name}" stands there twice`,
				"each position once, its pairs separated by commas",
			);
		}
		const joins: (readonly [string, string])[] = [];
		for (const pair of word.slice(colon + 1).split(",")) {
			if (pair.trim() === "") continue;
			const [from, to, more] = pair.split("-").map((role) => role.trim());
			if (!from || !to || more !== undefined || from === to) {
				return bad(`"${pair.trim()}" is not a pair of roles`, WANTED);
			}
			joins.push([from, to]);
		}
		positions.push({ name, joins });
	}
	return good(positions);
}

/** Positions as they are written in a cell. */
export function formatPositions(positions: readonly Position[]): string {
	return positions
		.map(({ name, joins }) => `${name}:${joins.map(([from, to]) => `${from}-${to}`).join(",")}`)
		.join("; ");
}
