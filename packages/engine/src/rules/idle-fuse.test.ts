import { expect, test } from "vitest";
import { idleFuse } from "./idle-fuse.js";
import { battery, benchCircuit, grounded, part, wire } from "./support/bench-loom.test-helper.js";

const fuse = (id: string) => part(id, "fuse", ["in", "out"], { values: { amps: 10 } });
const key = part("KEY", "switch", ["30", "15"], { positions: "off:; run:30-15" });
const lamp = part("E1", "lamp", ["a", "b"], { values: { watts: 5 } });

const check = (...runs: string[]) =>
	idleFuse.check(
		benchCircuit({
			parts: [battery, fuse("F1"), fuse("F2"), key, lamp],
			wires: [
				...grounded,
				wire("W1", "BAT.+ > F1.in", 2.5),
				wire("W2", "F1.out > KEY.30"),
				wire("W3", "KEY.15 > F2.in"),
				...runs.map((run, k) => wire(`L${k}`, run)),
			],
		}),
	);

test("a fuse with a lamp behind it, through a switch and another fuse", () => {
	expect(check("F2.out > E1.a", "E1.b > G1")).toEqual([]);
});

test("once the lamp is gone both fuses are idle, also with an old wire stowed", () => {
	const found = check("F2.out > stowed");
	expect(found.map((f) => [f.severity, f.where])).toEqual([
		["note", "F1"],
		["note", "F2"],
	]);
	expect(found[1]!.path).toEqual(["F2", "F2.out", "L0"]);
});
