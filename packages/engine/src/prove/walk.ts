/**
 * The order in which readings are taken: by where the two leads are, so that they are seldom carried.
 *
 * All readings between the same two places come together. Between groups one lead stays where it is as long as
 * readings are left there.
 */

export interface Stop {
	/** Places of the two points. */
	readonly places: readonly [string, string];
	/** Order among readings of the same two places: connector and cavity. */
	readonly key: string;
}

/** One reading in order; `turned` where the first point is better the second. */
export interface Step {
	readonly at: number;
	readonly turned: boolean;
}

/** Names with numbers in them, smaller numbers first. */
export function byName(x: string, y: string): number {
	return x.localeCompare(y, "en", { numeric: true });
}

/** @param from places at which the leads are, where they are known */
export function walk(stops: readonly Stop[], from: readonly string[] = []): Step[] {
	const left = new Set(stops.keys());
	const steps: Step[] = [];
	let [home, other] = [from[0] ?? "", from[1] ?? ""];
	const countAt = (place: string) => [...left].filter((k) => stops[k]!.places.includes(place)).length;
	while (left.size > 0) {
		if (countAt(home) === 0)
			[home, other] = countAt(other) > 0 ? [other, home] : [busiest(stops, left), other];
		const here = [...left].filter((k) => stops[k]!.places.includes(home));
		const farOf = (k: number) => {
			const [a, b] = stops[k]!.places;
			return a === home ? b : a;
		};
		const far = new Map<string, number[]>();
		for (const k of here) far.set(farOf(k), [...(far.get(farOf(k)) ?? []), k]);
		// Where the other lead is already, then beside the first, then by name.
		const order = [...far.keys()].sort(
			(x, y) =>
				Number(y === other) - Number(x === other) || Number(y === home) - Number(x === home) || byName(x, y),
		);
		for (const place of order) {
			const group = far.get(place)!.sort((x, y) => byName(stops[x]!.key, stops[y]!.key));
			for (const at of group) {
				steps.push({ at, turned: stops[at]!.places[0] !== home });
				left.delete(at);
			}
			other = place;
		}
	}
	return steps;
}

function busiest(stops: readonly Stop[], left: ReadonlySet<number>): string {
	const count = new Map<string, number>();
	for (const k of left)
		for (const place of new Set(stops[k]!.places)) count.set(place, (count.get(place) ?? 0) + 1);
	return [...count].sort((x, y) => y[1] - x[1] || byName(x[0], y[0]))[0]![0];
}

/** Times that a lead goes to another place in a sequence of pairs of places. */
export function placeChanges(pairs: readonly (readonly [string, string])[]): number {
	let changes = 0;
	pairs.forEach(([a, b], k) => {
		const [c, d] = pairs[k - 1] ?? [a, b];
		const straight = Number(a !== c) + Number(b !== d);
		const crossed = Number(a !== d) + Number(b !== c);
		changes += Math.min(straight, crossed);
	});
	return changes;
}
