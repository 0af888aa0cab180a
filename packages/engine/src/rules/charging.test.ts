import { expect, test } from "vitest";
import { charging } from "./charging.js";
import { battery, benchCircuit, grounded, joint, part, wire } from "./support/bench-loom.test-helper.js";

const check = (plus: string, strap: readonly string[], strapMm2 = 25) =>
	charging.check(
		benchCircuit({
			parts: [
				battery,
				part("GEN", "generator", ["B+", "-"]),
				part("F1", "fuse", ["in", "out"], { values: { amps: 200 } }),
			],
			joints: [
				joint("G1", "ground"),
				joint("G2", "ground", { metal: "engine" }),
				joint("G3", "ground", { metal: "engine" }),
			],
			wires: [
				...grounded,
				wire("W1", "BAT.+ > F1.in", 35),
				wire("W2", plus, 35),
				wire("W3", "GEN.- > G2", 35, 0.1),
				...strap.map((run) => wire("STRAP", run, strapMm2, 0.4)),
			],
		}),
	);

test("B+ over its fuse, minus over engine metal and strap", () => {
	expect(check("F1.out > GEN.B+", ["G3 > G1"])).toEqual([]);
});

test("no strap, a strap far too thin, a loose B+", () => {
	expect(check("F1.out > GEN.B+", []).map((f) => f.where)).toEqual(["GEN: GEN.-"]);
	expect(check("F1.out > GEN.B+", ["G3 > G1"], 0.5)[0]!.why).toMatch(/has 0\.01\d* ohm/);
	expect(check("F1.out > stowed", ["G3 > G1"])[0]!).toMatchObject({ where: "GEN: GEN.B+", severity: "warn" });
});
