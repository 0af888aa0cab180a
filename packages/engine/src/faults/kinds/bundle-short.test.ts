/** Wires of one bundle that touch. */
import { expect, it } from "vitest";
import { operate, voltsAt } from "../../circuit/index.js";
import { demoCar } from "../../test-support/demo.test-helper.js";
import { bundleShort } from "./bundle-short.js";

const car = demoCar("main");
const loom = car.converted;
const circuit = car.circuit("converted");
const faults = bundleShort.list({ circuit, loom, touched: car.touched, steps: new Map() });
const wiresOf = (id: string) => id.split(":").slice(1) as [string, string];

it("lists pairs that lie together and were both worked on, or are twisted, each once", () => {
	expect(faults.length).toBeGreaterThan(20);
	expect(faults.length).toBeLessThan(400);
	for (const { id } of faults) {
		const [one, two] = wiresOf(id).map((wire) => loom.wires.get(wire)!);
		expect(one!.bundle, id).toBe(two!.bundle);
		const twisted = one!.pair !== "" && one!.pair === two!.pair;
		expect(twisted || (car.touched.wires.has(one!.id) && car.touched.wires.has(two!.id)), id).toBe(true);
	}
	expect(new Set(faults.map(({ id }) => wiresOf(id).sort().join())).size).toBe(faults.length);
});

it("the two data bus wires of the new bus end, touching, lie at one potential", () => {
	const fault = faults.find(({ id }) => wiresOf(id).sort().join() === "N11,N12")!;
	const sound = operate(circuit, circuit.standing("bus-dominant"));
	const shorted = operate(circuit, circuit.standing("bus-dominant"), { change: fault.patterns[0]!.change });
	const apart = ({ volts }: typeof sound) =>
		voltsAt(volts, circuit.node("BE-N.1")!) - voltsAt(volts, circuit.node("BE-N.2")!);
	// 3.5 and 1.5 V into 60 ohm (ISO 11898-2); 0.1 ohm across them leaves next to nothing.
	expect(apart(sound)).toBeGreaterThan(1.5);
	expect(apart(shorted)).toBeLessThan(0.05);
});
