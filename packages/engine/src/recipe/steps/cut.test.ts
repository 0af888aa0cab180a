import { expect, test } from "vitest";
import { after, bench, refused, run, step } from "../bench.test-helper.js";

test("a cut at a length keeps the name up to the cut and names the rest", () => {
	const { loom, misfits } = after(step("cut", { wire: "W1", at: { metres: 0.7 } }));
	expect(misfits).toEqual([]);
	expect(run(loom, "W1")).toBe("E1.1 -> cut");
	expect(run(loom, "W1+b")).toBe("cut -> T1.1");
	// 2 m - 0.7 m = 1.3 m, without the rounding noise of binary fractions
	expect([loom.wires.get("W1")?.metres, loom.wires.get("W1+b")?.metres]).toEqual([0.7, 1.3]);
	const { from: _f, to: _t, metres: _m, id: _i, ...like } = bench.wires.get("W1")!;
	expect(loom.wires.get("W1+b")).toMatchObject(like);
});

test("the rest takes the name in new", () => {
	const { loom } = after(step("cut", { wire: "W1", at: { metres: 1 }, fresh: "W1T" }));
	expect(run(loom, "W1T")).toBe("cut -> T1.1");
	expect(loom.wires.has("W1+b")).toBe(false);
});

test.each([
	["from", "cut -> T1.1"],
	["to", "E1.1 -> cut"],
] as const)("off at the %s end", (at, left) => {
	const { loom, misfits } = after(step("cut", { wire: "W1", at }));
	expect(misfits).toEqual([]);
	expect(run(loom, "W1")).toBe(left);
	expect(loom.wires.size).toBe(bench.wires.size);
});

test("only the cut is touched, not the far ends", () => {
	const { touched } = after(step("cut", { wire: "W1", at: { metres: 1 } }));
	expect([...touched.ends.keys()]).toEqual(["W1@to", "W1+b@from"]);
	expect([...touched.wires.keys()]).toEqual(["W1", "W1+b"]);
	expect(touched.contacts.size + touched.connectors.size).toBe(0);
});

test("what was done before at the far end stays with the rest of the wire", () => {
	const { touched } = after(
		step("move terminal", { from: "T1.1", to: "E1.3" }),
		step("cut", { wire: "W1", at: { metres: 1 } }),
	);
	expect(touched.ends.get("W1+b@to")).toEqual(["1"]);
	expect(touched.ends.get("W1@to")).toEqual(["2"]);
	expect(touched.wires.get("W1+b")).toEqual(["1", "2"]);
});

test("misfits", () => {
	expect(refused(step("cut"))).toEqual([
		"step 1 'cut': wire: is empty; name the wire to cut",
		expect.stringContaining("at: is empty; give the length"),
	]);
	expect(refused(step("cut", { wire: "W99", at: "to" }))[0]).toContain("there is no wire W99");
	expect(refused(step("cut", { wire: "W1", at: { metres: 2 } }))).toEqual([
		"step 1 'cut': at: 2 m is not on W1, which is 2 m long; give a length between 0 and 2 m",
	]);
	expect(refused(step("cut", { wire: "W1", at: { metres: 0 } }))).toHaveLength(1);
	expect(refused(step("cut", { wire: "W1", at: { metres: Number.NaN } }))).toHaveLength(1);
	expect(refused(step("cut", { wire: "W6", at: "to" }))[0]).toContain("the to end of W6 is loose already");
	expect(refused(step("cut", { wire: "W1", at: { metres: 1 }, fresh: "W2" }))[0]).toContain(
		"new: there is a wire W2 already",
	);
});
