import { expect, test } from "vitest";
import { parkedDraw } from "./parked-draw.js";
import { battery, benchCircuit, grounded, part, wire } from "./support/bench-loom.test-helper.js";

const car = (feed: string) =>
	benchCircuit({
		parts: [
			battery,
			part("KEY", "switch", ["30", "15"], { positions: "off:; run:30-15", duty: "start key" }),
			part("M", "module", ["supply", "ground"], { values: { amps: 0.1 } }),
		],
		conditions: { off: {}, run: { KEY: "run" } },
		wires: [
			...grounded,
			wire("W1", "BAT.+ > KEY.30"),
			wire("W2", `${feed} > M.supply`),
			wire("W3", "M.ground > G1"),
		],
	});

test("0.1 A that the key no longer switches", () => {
	expect(parkedDraw.check(car("KEY.15"), car("KEY.15"))).toEqual([]);
	expect(parkedDraw.check(car("KEY.30"), car("KEY.30"))).toEqual([]);
	const [found, ...more] = parkedDraw.check(car("KEY.30"), car("KEY.15"));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "parked-draw", severity: "warn", path: ["M"] });
	expect(found!.why).toContain("In 'off' the battery gives 0.105 A more");
});
