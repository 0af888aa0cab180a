import { expect, test } from "vitest";
import { after, refused, run, step } from "../bench.test-helper.js";

const byWire = { from: "E1.3", to: "G1", fresh: "N1", mm2: 1, metres: 0.4 };

test("a loose end goes to the ground point itself", () => {
	const { loom, misfits, touched } = after(
		step("cut", { wire: "W1", at: "to" }),
		step("tie to ground", { wire: "W1", to: "G1" }),
	);
	expect(misfits).toEqual([]);
	expect(run(loom, "W1")).toBe("E1.1 -> G1");
	expect(touched.joints.get("G1")).toEqual(["2"]);
});

test("a contact by a new wire", () => {
	const { loom, misfits } = after(step("tie to ground", byWire));
	expect(misfits).toEqual([]);
	expect(run(loom, "N1")).toBe("E1.3 -> G1");
});

test("a ground point fitted before", () => {
	const { loom, misfits } = after(
		step("fit part", { part: "G9" }),
		step("tie to ground", { ...byWire, to: "G9" }),
	);
	expect(misfits).toEqual([]);
	expect(run(loom, "N1")).toBe("E1.3 -> G9");
});

test("misfits", () => {
	expect(refused(step("tie to ground")).map((text) => text.split(": ")[1])).toEqual([
		"to",
		"from",
		"new",
		"size",
		"length",
	]);
	expect(refused(step("tie to ground", { wire: "W6" }))).toHaveLength(1);
	expect(refused(step("tie to ground", { wire: "W6", to: "S1" }))[0]).toContain("S1 is a splice");
	expect(refused(step("tie to ground", { wire: "W1", to: "G1" }))[0]).toContain("W1 has no loose end");
	expect(refused(step("tie to ground", { ...byWire, wire: "W6" }))).toHaveLength(2);
	expect(refused(step("tie to ground", { ...byWire, from: "S1" }))[0]).toContain("S1 is a joint");
	expect(refused(step("tie to ground", { ...byWire, from: "E1.1" }))[0]).toContain("already has wire W1");
	expect(refused(step("tie to ground", { ...byWire, to: "E1.2" }))[0]).toContain("E1.2 is a contact");
});
