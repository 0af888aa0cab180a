/** An orthogonal line with rounded corners, as SVG path data. */
import type { Point } from "./types.js";

export function rounded(points: readonly Point[], radius: number): string {
	const [first, ...rest] = points;
	if (!first) return "";
	let path = `M${first.x} ${first.y}`;
	let at = first;
	rest.forEach((corner, k) => {
		const next = rest[k + 1];
		if (!next) {
			path += `L${corner.x} ${corner.y}`;
			return;
		}
		const r = Math.min(radius, distance(at, corner) / 2, distance(corner, next) / 2);
		const start = towards(corner, at, r);
		const end = towards(corner, next, r);
		path += `L${start.x} ${start.y}Q${corner.x} ${corner.y} ${end.x} ${end.y}`;
		at = corner;
	});
	return path;
}

const distance = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y);

function towards(from: Point, to: Point, by: number): Point {
	const whole = distance(from, to) || 1;
	return { x: from.x + ((to.x - from.x) * by) / whole, y: from.y + ((to.y - from.y) * by) / whole };
}
