/** The wire nearest to a point of a drawing: where wires run close together, a finger covers several. */
import type { PlacedWire, Point } from "../layout/types.js";

/** @param within largest distance, in drawing units; empty where no wire is that near */
export function nearestWire(wires: readonly PlacedWire[], at: Point, within: number): string {
	let best = within;
	let found = "";
	for (const { wire, points } of wires) {
		points.slice(1).forEach((end, k) => {
			const far = distanceToSegment(at, points[k]!, end);
			if (far > best) return;
			best = far;
			found = wire.id;
		});
	}
	return found;
}

function distanceToSegment(p: Point, a: Point, b: Point): number {
	const [dx, dy] = [b.x - a.x, b.y - a.y];
	const along = ((p.x - a.x) * dx + (p.y - a.y) * dy) / (dx * dx + dy * dy || 1);
	const t = Math.min(1, Math.max(0, along));
	return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}
