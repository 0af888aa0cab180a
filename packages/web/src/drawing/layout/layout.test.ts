import Elk from "elkjs/lib/elk.bundled.js";
import fc from "fast-check";
import { expect, test } from "vitest";
import { buildSheet } from "../sheet/build.js";
import { smallLoom } from "../small-car.test-helper.js";
import { fromElk } from "./from-elk.js";
import { toElk } from "./to-elk.js";
import type { PlacedNode, PlacedSheet } from "./types.js";

const loom = smallLoom();
const elk = new Elk();

async function place(path: readonly string[]): Promise<PlacedSheet> {
	const sheet = buildSheet(loom, path, 0, () => "");
	return fromElk(sheet, await elk.layout(toElk(sheet)));
}

const all = [...loom.wires.keys()];
const top = (placed: PlacedSheet, id: string) => placed.nodes.find(({ node }) => node.id === id)!.y;

test("supply stands at the top, ground at the bottom", async () => {
	const placed = await place(all);
	const order = ["BAT", "F1", "SP1", "K1", "L1", "G1"].map((id) => top(placed, id));
	expect(order).toEqual([...order].sort((a, b) => a - b));
	expect(new Set(order).size).toBe(order.length);
});

test("the same drawing every time", async () => {
	expect(await place(all)).toEqual(await place(all));
});

const overlap = (a: PlacedNode, b: PlacedNode) =>
	a.x < b.x + b.shape.width &&
	b.x < a.x + a.shape.width &&
	a.y < b.y + b.shape.height &&
	b.y < a.y + a.shape.height;

test("whatever is drawn: no symbol on another, every wire from terminal to terminal by right angles", async () => {
	await fc.assert(
		fc.asyncProperty(
			fc.uniqueArray(fc.constantFrom(...all), { minLength: 1, maxLength: 9 }),
			async (path) => {
				const placed = await place(path);
				placed.nodes.forEach((a, k) => {
					for (const b of placed.nodes.slice(k + 1))
						expect(overlap(a, b), `${a.node.id} on ${b.node.id}`).toBe(false);
				});
				for (const { wire, points } of placed.wires) {
					expect(points.length).toBeGreaterThanOrEqual(2);
					for (const [end, at] of [
						[wire.upper, points[0]!],
						[wire.lower, points.at(-1)!],
					] as const) {
						const { shape, x, y } = placed.nodes.find(({ node }) => node.id === end.node)!;
						const ways = shape.terminals.filter(({ id }) => end.port === "" || id === end.port);
						const near = ways.some((t) => Math.hypot(x + t.x - at.x, y + t.y - at.y) < 0.01);
						expect(near, `${wire.id} at ${end.node}`).toBe(true);
					}
					points.slice(1).forEach((p, k) => {
						expect(Math.min(Math.abs(p.x - points[k]!.x), Math.abs(p.y - points[k]!.y))).toBeLessThan(0.01);
					});
				}
			},
		),
		{ seed: 2, numRuns: 40 },
	);
});
