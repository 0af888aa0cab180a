import { expect, test } from "vitest";
import type { PlacedWire } from "../layout/types.js";
import { nearestWire } from "./nearest-wire.js";

const wire = (id: string, ...points: [number, number][]): PlacedWire =>
	({ wire: { id }, points: points.map(([x, y]) => ({ x, y })) }) as unknown as PlacedWire;

const wires = [wire("left", [0, 0], [0, 100]), wire("right", [12, 0], [12, 100], [60, 100])];

test("of two wires side by side the nearer one", () => {
	expect(nearestWire(wires, { x: 4, y: 50 }, 20)).toBe("left");
	expect(nearestWire(wires, { x: 7, y: 50 }, 20)).toBe("right");
});

test("past a wire's end its end counts, and too far away is none", () => {
	expect(nearestWire(wires, { x: 70, y: 100 }, 20)).toBe("right");
	expect(nearestWire(wires, { x: 90, y: 100 }, 20)).toBe("");
	expect(nearestWire([], { x: 0, y: 0 }, 20)).toBe("");
});
