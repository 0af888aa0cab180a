import { expect, test } from "vitest";
import { battery, benchCircuit, grounded, part, wire } from "./support/bench-loom.test-helper.js";
import { unsettled } from "./unsettled.js";

const relay = part("K1", "relay", ["85", "86", "30", "87", "87a"]);
const car = (coil: string) =>
	benchCircuit({
		parts: [battery, relay],
		wires: [...grounded, wire("W1", "BAT.+ > K1.30"), wire("W2", coil), wire("W3", "K1.85 > G1")],
	});

test("a coil fed from the battery comes to rest, one fed through its own break contact buzzes", () => {
	expect(unsettled.check(car("BAT.+ > K1.86"))).toEqual([]);
	const [found] = unsettled.check(car("K1.87a > K1.86"));
	expect(found).toMatchObject({ rule: "unsettled", severity: "stop", where: "K1", path: ["K1"] });
	expect(found!.why).toContain("keeps switching to and fro");
});
