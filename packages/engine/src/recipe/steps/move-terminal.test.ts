import { expect, test } from "vitest";
import { after, refused, run, step } from "../bench.test-helper.js";

test("the wire goes to the other cavity, and both connectors were opened", () => {
	const { loom, misfits, touched } = after(step("move terminal", { from: "T1.1", to: "E1.3" }));
	expect(misfits).toEqual([]);
	expect(run(loom, "W1")).toBe("E1.1 -> E1.3");
	expect([...touched.contacts.keys()].sort()).toEqual(["E1.3", "T1.1"]);
	expect([...touched.connectors.keys()].sort()).toEqual(["C1", "C2"]);
	expect([...touched.ends.keys()]).toEqual(["W1@to"]);
});

test("every wire crimped in the terminal goes along, a looped one with both ends", () => {
	const link = { from: "T1.1", fresh: "L1", to: "K1.86", mm2: 1, metres: 0.1 };
	const { loom } = after(
		step("bridge", link),
		step("bridge", { ...link, from: "T1.2", to: "T1.1", fresh: "L2" }),
		step("move terminal", { from: "T1.1", to: "E1.3" }),
	);
	expect(["W1", "L1", "L2"].map((id) => run(loom, id))).toEqual([
		"E1.1 -> E1.3",
		"E1.3 -> K1.86",
		"T1.2 -> E1.3",
	]);
});

test("two cavities can be swapped through a free one", () => {
	const { loom, misfits } = after(
		step("move terminal", { from: "T1.1", to: "E1.3" }),
		step("move terminal", { from: "T1.2", to: "T1.1" }),
		step("move terminal", { from: "E1.3", to: "T1.2" }),
	);
	expect(misfits).toEqual([]);
	expect([run(loom, "W1"), run(loom, "W3")]).toEqual(["E1.1 -> T1.2", "S1 -> T1.1"]);
});

test("misfits", () => {
	expect(refused(step("move terminal"))).toHaveLength(2);
	expect(refused(step("move terminal", { from: "E1.3", to: "E1.10" }))).toEqual([
		"step 1 'move terminal': from: E1.3 has no wire on it; name a contact with a wire crimped to it",
	]);
	expect(refused(step("move terminal", { from: "T1.1", to: "E1.2" }))[0]).toContain(
		"E1.2 already has wire W2",
	);
	expect(refused(step("move terminal", { from: "T1.1", to: "T1.1" }))[0]).toContain("where it is already");
	expect(refused(step("move terminal", { from: "T1.1", to: "S1" }))[0]).toContain("S1 is a joint");
	expect(refused(step("move terminal", { from: "X.1", to: "E1.3" }))[0]).toContain("there is no contact X.1");
});
