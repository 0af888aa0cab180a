import { expect, test } from "vitest";
import { after, bench, refused, run, step } from "../bench.test-helper.js";

test("the part and its contacts go, the wires keep bare ends, the housing stays", () => {
	const { loom, misfits, touched } = after(step("remove part", { part: "T1" }));
	expect(misfits).toEqual([]);
	expect(loom.parts.has("T1")).toBe(false);
	expect([...loom.contacts.keys()].filter((id) => id.startsWith("T1."))).toEqual([]);
	expect([run(loom, "W1"), run(loom, "W3")]).toEqual(["E1.1 -> cut", "S1 -> cut"]);
	expect(loom.parts.has("C2")).toBe(true);
	expect(loom.wires.size).toBe(bench.wires.size);
	expect([...touched.contacts.keys()]).toEqual(["T1.1", "T1.2"]);
	expect([...touched.connectors.keys()]).toEqual(["C2"]);
	expect([...touched.parts.keys()]).toEqual(["T1"]);
});

test("a link between two contacts of the part ends bare on both sides", () => {
	const link = { fresh: "L1", from: "K1.85", to: "K1.86", mm2: 1, metres: 0.1 };
	const { loom } = after(step("bridge", link), step("remove part", { part: "K1" }));
	expect(run(loom, "L1")).toBe("cut -> cut");
});

test("the housing can go once the part is out", () => {
	const { loom, misfits } = after(step("remove part", { part: "T1" }), step("remove part", { part: "C2" }));
	expect(misfits).toEqual([]);
	expect(loom.parts.has("C2")).toBe(false);
});

test("misfits", () => {
	expect(refused(step("remove part"))).toHaveLength(1);
	expect(refused(step("remove part", { part: "T9" }))[0]).toContain("there is no part T9");
	expect(refused(step("remove part", { part: "S1" }))[0]).toContain("S1 is a joint");
	expect(refused(step("remove part", { part: "C2" }))).toEqual([
		"step 1 'remove part': part: connector C2 still holds contacts of T1; take those parts out first",
	]);
	expect(refused(step("remove part", { part: "T1" }), step("remove part", { part: "T1" }))).toHaveLength(1);
});
