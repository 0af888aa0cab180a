import { expect, test } from "vitest";
import { after, refused, run, step } from "../bench.test-helper.js";

const row = { fresh: "N1", from: "E1.3", to: "S1", mm2: 1.5, metres: 0.8 };

test("a new wire as its row says", () => {
	const more = { colours: ["BU"], circuit: "feed", pair: "P9", bundle: "sill" };
	const { loom, misfits } = after(step("add wire", { ...row, ...more }));
	expect(misfits).toEqual([]);
	expect(run(loom, "N1")).toBe("E1.3 -> S1");
	expect(loom.wires.get("N1")).toMatchObject({ mm2: 1.5, metres: 0.8, marks: [], ...more });
});

test("studs and joints take one more wire", () => {
	const { misfits } = after(step("add wire", { ...row, from: "BAT.+", to: "G1" }));
	expect(misfits).toEqual([]);
});

test("both ends are touched", () => {
	const { touched } = after(step("add wire", row));
	expect([...touched.ends.keys()]).toEqual(["N1@from", "N1@to"]);
	expect([...touched.contacts.keys()]).toEqual(["E1.3"]);
	expect([...touched.joints.keys()]).toEqual(["S1"]);
});

test("misfits", () => {
	expect(refused(step("add wire")).map((text) => text.split(": ")[1])).toEqual([
		"new",
		"from",
		"to",
		"size",
		"length",
	]);
	expect(refused(step("add wire", { ...row, from: "E1.1" }))[0]).toContain("E1.1 already has wire W1 on it");
	expect(refused(step("add wire", { ...row, to: "E1.3" }))[0]).toContain("E1.3 is where it starts");
	expect(refused(step("add wire", { ...row, fresh: "W1" }))[0]).toContain("there is a wire W1 already");
	expect(refused(step("add wire", { ...row, from: "Q.1", to: "S8" }))).toHaveLength(2);
});
