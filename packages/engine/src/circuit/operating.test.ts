/** Cycling: what never comes to rest is told with every part that takes part. */
import { describe, expect, it } from "vitest";
import { OnBench } from "../devices/bench.test-helper.js";
import { CircuitError } from "./error.js";
import { operate } from "./operating.js";

const RELAY = { 85: "85", 86: "86", 30: "30", 87: "87", "87a": "87a" };
const relayPins = (id: string) =>
	Object.fromEntries(Object.entries(RELAY).map(([pin, role]) => [`${id}.${pin}`, role]));

function bench(parts: Record<string, string>, pins: Record<string, string>, nets: readonly string[]) {
	const all = new OnBench({
		parts: { BAT: "battery; volts=12", S: "switch | off:; on:1-2", ...parts },
		pins: { "BAT.+": "+", "BAT.-": "-", "S.1": "1", "S.2": "2", ...pins },
		nets: ["BAT.+ S.1", ...nets],
		when: { off: { S: "off" }, on: { S: "on" } },
	});
	return all.car.circuit("delivered");
}

function troubleIn(circuit: ReturnType<typeof bench>, condition: string): CircuitError | undefined {
	try {
		operate(circuit, circuit.standing(condition));
		return undefined;
	} catch (error) {
		if (error instanceof CircuitError) return error;
		throw error;
	}
}

describe("a relay whose coil is fed through its own break contact", () => {
	// The old buzzer: at rest the coil is fed, pulled in it is not. The lamp beside the coil flickers with it.
	const buzzer = bench(
		{ K1: "relay", L1: "lamp; watts=5", K2: "relay" },
		{ ...relayPins("K1"), "L1.1": "a", "L1.2": "b", ...relayPins("K2") },
		[
			"S.2 K1.30 K2.86",
			"K1.87a K1.86 L1.1",
			"K1.87 A",
			"BAT.- K1.85 L1.2 K2.85 GND",
			"K2.30 B",
			"K2.87 C",
			"K2.87a D",
		],
	);

	it("buzzes when fed: told with the lamp, without the relay beside it that pulls in once and stays", () => {
		const trouble = troubleIn(buzzer, "on");
		expect(trouble?.where).toEqual(["K1", "L1"]);
		expect(trouble?.message).toBe("does not settle: K1, L1 keep switching to and fro");
	});

	it("rests when not fed", () => {
		expect(troubleIn(buzzer, "off")).toBeUndefined();
	});
});

// K1 at rest feeds K2, K2 pulled in feeds K1, K1 pulled in lets K2 go, and so on: four rounds, one relay in each.
it("two relays that chase each other are both told", () => {
	const ring = bench({ K1: "relay", K2: "relay" }, { ...relayPins("K1"), ...relayPins("K2") }, [
		"S.2 K1.30 K2.30",
		"K1.87a K2.86",
		"K2.87 K1.86",
		"K1.87 A",
		"K2.87a B",
		"BAT.- K1.85 K2.85 GND",
	]);
	expect(troubleIn(ring, "on")?.where).toEqual(["K1", "K2"]);
	expect(troubleIn(ring, "off")).toBeUndefined();
});
