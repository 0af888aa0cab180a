import { expect, test } from "vitest";
import { cutOffLoad } from "./cut-off-load.js";
import {
	battery,
	benchCircuit,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";

const parts = [
	battery,
	part("F1", "fuse", ["in", "out"], { values: { amps: 10 } }),
	part("KEY", "switch", ["1", "2"], { positions: "off:; on:1-2" }),
	part("R1", "resistor", ["a", "b"], { values: { ohms: 1 } }),
	part("M1", "motor", ["a", "b"], { values: { ohms: 1 }, label: "pump" }),
	unit("ECU", "control unit", { 1: "supply", 2: "ground", 3: "low-side", 4: "bridge", 5: "bridge" }),
	part("MOD", "module", ["supply", "ground", "L"]),
];

const check = (...runs: string[]) =>
	cutOffLoad.check(
		benchCircuit({
			parts,
			joints: [joint("G1", "ground"), joint("S1")],
			wires: [...grounded, wire("W1", "BAT.+ > F1.in"), ...runs.map((run, k) => wire(`L${k + 1}`, run))],
		}),
	);

test("feeds through fuse, open switch and series resistor; grounds by wire, switch or driver", () => {
	expect(check("F1.out > KEY.1", "KEY.2 > R1.a", "R1.b > M1.a", "M1.b > G1")).toEqual([]);
	expect(check("F1.out > M1.a", "M1.b > KEY.1", "KEY.2 > G1")).toEqual([]);
	expect(check("F1.out > M1.b", "M1.a > ECU.3")).toEqual([]);
	expect(check("M1.a > ECU.4", "M1.b > ECU.5")).toEqual([]);
	expect(check("F1.out > M1.b", "M1.a > MOD.L")).toEqual([]);
});

test("a ground lead that ends in a splice, a feed that was stowed, both", () => {
	const [found, ...more] = check("F1.out > M1.a", "M1.b > S1");
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "cut-off-load", severity: "warn", where: "M1 pump" });
	expect(found!.why).toContain("no way to ground");
	expect(found!.path.slice(-4)).toEqual(["M1", "M1.b", "L2", "S1"]);
	expect(check("M1.a > stowed", "M1.b > G1")[0]!.why).toContain("no way to a supply");
	expect(check("M1.a > stowed", "M1.b > stowed")[0]!.why).toContain("neither");
	expect(check("F1.out > M1.a", "F1.out > M1.b")[0]!.why).toContain("no way to ground");
});
