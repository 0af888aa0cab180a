import { expect, test } from "vitest";
import { after, refused, run, step } from "../bench.test-helper.js";

const cutW1 = step("cut", { wire: "W1", at: { metres: 1 } });
const row = { wire: "W1", to: "E1.3", fresh: "W1X", joint: "S9", metres: 1.5, place: "behind the dash" };

test("the loose end is spliced to a new wire like the one it continues", () => {
	const { loom, misfits } = after(cutW1, step("extend", row));
	expect(misfits).toEqual([]);
	expect(run(loom, "W1")).toBe("E1.1 -> S9");
	expect(run(loom, "W1X")).toBe("S9 -> E1.3");
	expect(loom.wires.get("W1X")).toMatchObject({
		mm2: 0.75,
		colours: ["BK", "WH"],
		metres: 1.5,
		circuit: "signal",
		pair: "P1",
		bundle: "dash",
		marks: ["wet"],
	});
	expect(loom.joints.get("S9")).toMatchObject({ kind: "splice", place: "behind the dash", ohms: undefined });
});

test("what the row gives goes before what the wire is like", () => {
	const own = { mm2: 1, colours: ["GN"], circuit: "feed", pair: "P2", bundle: "sill" };
	const { loom } = after(cutW1, step("extend", { ...row, ...own }));
	expect(loom.wires.get("W1X")).toMatchObject(own);
});

test("the from end can be the loose one", () => {
	const { loom } = after(cutW1, step("extend", { ...row, wire: "W1+b" }));
	expect(run(loom, "W1+b")).toBe("S9 -> T1.1");
});

test("a joint takes any number of wires, a stud as well", () => {
	const { loom, misfits } = after(
		cutW1,
		step("extend", { ...row, to: "S1" }),
		step("extend", { ...row, wire: "W1+b", to: "BAT.+", fresh: "W1Y", joint: "S10" }),
	);
	expect(misfits).toEqual([]);
	expect([run(loom, "W1X"), run(loom, "W1Y")]).toEqual(["S9 -> S1", "S10 -> BAT.+"]);
});

test("touches the splice, its ends and the far contact with its connector", () => {
	const { touched } = after(cutW1, step("extend", row));
	expect(touched.joints.get("S9")).toEqual(["2"]);
	expect(touched.contacts.get("E1.3")).toEqual(["2"]);
	expect(touched.connectors.get("C1")).toEqual(["2"]);
	expect(touched.wires.get("W1X")).toEqual(["2"]);
	expect(touched.ends.get("W1@to")).toEqual(["1", "2"]);
	expect(touched.contacts.has("E1.1")).toBe(false);
});

test("misfits", () => {
	expect(refused(step("extend")).map((text) => text.split(": ")[1])).toEqual([
		"wire",
		"to",
		"new",
		"joint",
		"length",
	]);
	expect(refused(step("extend", row))).toEqual([
		"step 1 'extend': wire: W1 has no loose end, it runs from E1.1 to T1.1; cut it first, or name a wire with a loose end",
	]);
	expect(refused(step("extend", { ...row, wire: "W7" }))[0]).toContain("both ends of W7 are loose");
	expect(refused(cutW1, step("extend", { ...row, to: "E1.2" }))[0]).toContain(
		"E1.2 already has wire W2 on it",
	);
	expect(refused(cutW1, step("extend", { ...row, to: "K1.85" }))[0]).toContain("K1.85 already has wire W4");
	expect(refused(cutW1, step("extend", { ...row, to: "E1.99" }))[0]).toContain("no contact or joint E1.99");
	expect(refused(cutW1, step("extend", { ...row, fresh: "W2", joint: "S1" }))).toHaveLength(2);
});
