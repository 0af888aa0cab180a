import { expect, test } from "vitest";
import { battery, benchCircuit, grounded, part, wire } from "./support/bench-loom.test-helper.js";
import { unwiredPin } from "./unwired-pin.js";

const clutch = part("CLU", "switch", ["1", "2", "3", "4"], {
	positions: "released:; pressed:1-2,3-4",
	label: "clutch switch",
});
const lamp = part("E1", "lamp", ["a", "b"], { values: { watts: 5 } });
const base = ["BAT.+ > CLU.1", "CLU.2 > E1.a", "E1.b > G1"];

const check = (runs: readonly string[]) =>
	unwiredPin.check(
		benchCircuit({
			parts: [battery, clutch, lamp],
			wires: [...grounded, ...runs.map((run, k) => wire(`L${k}`, run))],
		}),
	);

test("a spare pair of a switch is right, a half-wired one is not", () => {
	expect(check(base)).toEqual([]);
	const [found, ...more] = check([...base, "CLU.3 > G1"]);
	expect(more).toEqual([]);
	expect(found).toMatchObject({
		rule: "unwired-pin",
		severity: "warn",
		where: "CLU clutch switch: CLU.4",
		path: ["CLU", "CLU.4"],
	});
});

test("a lamp without its second wire, and a switch without any", () => {
	expect(check(base.slice(0, 2)).map((f) => f.where)).toEqual(["E1: E1.b"]);
	const [found] = check(["BAT.+ > E1.a", "E1.b > G1"]);
	expect(found!.why).toContain("nothing is wired");
});
