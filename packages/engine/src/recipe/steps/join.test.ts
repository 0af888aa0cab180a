import { expect, test } from "vitest";
import { after, refused, run, step } from "../bench.test-helper.js";

const cutW1 = step("cut", { wire: "W1", at: { metres: 1 } });

test("to a joint", () => {
	const { loom, misfits, touched } = after(cutW1, step("join", { wire: "W1", to: "S1" }));
	expect(misfits).toEqual([]);
	expect(run(loom, "W1")).toBe("E1.1 -> S1");
	expect(touched.joints.get("S1")).toEqual(["2"]);
});

test("two loose ends by a new splice", () => {
	const { loom, misfits } = after(cutW1, step("join", { wire: "W1+b", other: "W6", joint: "S9" }));
	expect(misfits).toEqual([]);
	expect([run(loom, "W1+b"), run(loom, "W6")]).toEqual(["S9 -> T1.1", "BAT.+ -> S9"]);
	expect(loom.joints.get("S9")?.kind).toBe("splice");
});

test("tapped into the run of another wire", () => {
	const tap = step("join", { wire: "W6", other: "W1", at: { metres: 0.5 }, joint: "S9" });
	const { loom, misfits, touched } = after(tap);
	expect(misfits).toEqual([]);
	expect([run(loom, "W6"), run(loom, "W1"), run(loom, "W1+b")]).toEqual([
		"BAT.+ -> S9",
		"E1.1 -> S9",
		"S9 -> T1.1",
	]);
	expect(loom.wires.get("W1+b")?.metres).toBe(1.5);
	expect([...touched.contacts.keys()]).toEqual([]);
	expect(run(after({ ...tap, fresh: "W1T" }).loom, "W1T")).toBe("S9 -> T1.1");
});

test("misfits", () => {
	expect(refused(step("join", { wire: "W6" }))).toHaveLength(2);
	expect(refused(step("join", { wire: "W6", other: "W1" }))).toEqual([
		"step 1 'join': joint: is empty; give the splice a name",
	]);
	expect(refused(step("join", { wire: "W6", other: "W1", joint: "S9" }))[0]).toContain(
		"other: W1 has no loose end",
	);
	expect(refused(step("join", { wire: "W6", to: "E1.3" }))[0]).toContain("to: E1.3 is a contact");
	expect(refused(step("join", { wire: "W6", to: "S1", other: "W1" }))[0]).toContain("give only one");
	expect(refused(step("join", { wire: "W6", other: "W6", joint: "S9" }))[0]).toContain("joined to itself");
	expect(refused(step("join", { wire: "W6", other: "W1", at: "to", joint: "S9" }))[0]).toContain(
		"at: is 'to'",
	);
	expect(refused(step("join", { wire: "W6", other: "W1", at: { metres: 9 }, joint: "S9" }))).toHaveLength(1);
	expect(refused(step("join", { wire: "W6", other: "W1", at: { metres: 1 }, joint: "S1" }))[0]).toContain(
		"there is a joint S1 already",
	);
});
