import { expect, test } from "vitest";
import { bench, joint, tables, wire } from "./bench.test-helper.js";
import { Draft } from "./draft.js";

/** Work of every sort, staged. */
function work(draft: Draft): void {
	draft.addJoint(joint("S9"));
	draft.addWire(wire("N1", "S9", "E1.3"));
	draft.split(draft.wires.get("W1")!, 1, "W1T", { at: "joint", joint: "S9" });
	draft.removePart("K1");
}

test("what is dropped was never done", () => {
	const draft = new Draft(bench);
	work(draft);
	draft.drop();
	expect(tables(draft.loom())).toEqual(tables(bench));
	draft.keep("1");
	expect(tables(draft.loom())).toEqual(tables(bench));
	expect(Object.values(draft.touched()).every((map) => map.size === 0)).toBe(true);
});

test("what is kept is in the loom and in no other", () => {
	const before = JSON.stringify(tables(bench));
	const draft = new Draft(bench);
	work(draft);
	draft.keep("1");
	const loom = draft.loom();
	expect([loom.wires.size, loom.parts.has("K1"), loom.joints.has("S9")]).toEqual([9, false, true]);
	expect(JSON.stringify(tables(bench))).toBe(before);
});

test("wires at a contact: those of before the step, and after it is kept those of after", () => {
	const draft = new Draft(bench);
	const ids = (contact: string) => draft.wiresAt(contact).map((row) => row.id);
	expect([ids("E1.3"), ids("T1.1"), ids("K1.85")]).toEqual([[], ["W1"], ["W4"]]);
	work(draft);
	expect(ids("E1.3")).toEqual([]);
	draft.keep("1");
	expect([ids("E1.3"), ids("T1.1"), ids("K1.85")]).toEqual([["N1"], ["W1T"], []]);
});
