import { expect, test } from "vitest";
import { benchCircuit, connector, unit, wire } from "./support/bench-loom.test-helper.js";
import { twoInACavity } from "./two-in-a-cavity.js";

const car = (...runs: string[]) =>
	benchCircuit({
		parts: [
			connector("X1"),
			unit("B1", "thermistor", { a: "a", b: "b" }, { connector: "X1" }),
			unit("B2", "thermistor", { a: "a", b: "b" }),
		],
		wires: runs.map((run, k) => wire(`W${k}`, run)),
	});

test("two wires in a terminal of a plug; a ring or blade of its own may take two", () => {
	expect(twoInACavity.check(car("B1.a > cut", "B1.b > cut", "B2.a > cut", "B2.a > stowed"))).toEqual([]);
	const two = car("B1.a > cut", "B1.a > stowed");
	const [found, ...more] = twoInACavity.check(two);
	expect(more).toEqual([]);
	expect(found).toMatchObject({ severity: "note", path: ["B1.a", "W0", "W1"] });
	expect(twoInACavity.check(two, two)).toEqual([]);
	expect(twoInACavity.check(two, car("B1.a > cut"))).toHaveLength(1);
});
