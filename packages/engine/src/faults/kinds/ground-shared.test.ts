/** A ground at another point: the change against the car with the wire really there. */
import { describe, expect, it } from "vitest";
import { demoCar } from "../../test-support/demo.test-helper.js";
import { groundShared } from "./ground-shared.js";
import { rewired, worstDifference } from "./volts.test-helper.js";

const car = demoCar("main");
const loom = car.converted;
const circuit = car.circuit("converted");
const faults = groundShared.list({ circuit, loom, touched: car.touched, steps: new Map() });

it("ground wires and returns that hands put on, each at other ground points than its own", () => {
	expect(faults.map(({ id }) => id)).toContain("ground shared wrongly:N10@to");
	for (const { id, patterns } of faults) {
		const [wire, side] = id.split(":")[1]!.split("@") as [string, "from" | "to"];
		expect(car.touched.wires.has(wire) || car.touched.ends.has(`${wire}@${side}`), id).toBe(true);
		const end = loom.wires.get(wire)![side];
		const own = end.at === "joint" ? circuit.node(end.joint) : undefined;
		for (const { change } of patterns) for (const { b } of change.added) expect(b, id).not.toBe(own);
	}
});

/** The ground point that a change leads to. */
function groundOf(node: number): string {
	return [...loom.joints.values()].find((joint) => circuit.node(joint.id) === node)!.id;
}

describe.each(faults)("$id", ({ id, patterns }) => {
	const [wire, side] = id.split(":")[1]!.split("@") as [string, string];
	const { change } = patterns[0]!;
	const joint = groundOf(change.added[0]!.b);
	const real = rewired(loom, (w, s, end) => (w === wire && s === side ? { at: "joint", joint } : end));
	it.each(["key-on", "running"])("in %s", (when) => {
		expect(worstDifference(circuit, change, real, when)).toBeLessThan(1e-4);
	});
});
