import { expect, test } from "vitest";
import { after, refused, run, step } from "../bench.test-helper.js";

test("a bare end is stowed", () => {
	const { loom, misfits, touched } = after(step("isolate and stow", { wire: "W6" }));
	expect(misfits).toEqual([]);
	expect(run(loom, "W6")).toBe("BAT.+ -> stowed");
	expect([...touched.ends.keys()]).toEqual(["W6@to"]);
	expect(touched.contacts.size).toBe(0);
});

test("both ends, where both are bare", () => {
	const { loom } = after(
		step("cut", { wire: "W1", at: "from" }),
		step("cut", { wire: "W1", at: "to" }),
		step("isolate and stow", { wire: "W1" }),
		step("isolate and stow", { wire: "W7" }),
	);
	expect([run(loom, "W1"), run(loom, "W7")]).toEqual(["stowed -> stowed", "stowed -> stowed"]);
});

test("misfits", () => {
	expect(refused(step("isolate and stow"))).toHaveLength(1);
	expect(refused(step("isolate and stow", { wire: "W1" }))).toEqual([
		"step 1 'isolate and stow': wire: W1 has no bare end, it runs from E1.1 to T1.1; name a wire with a bare end",
	]);
	const stow = step("isolate and stow", { wire: "W6" });
	expect(refused(stow, stow)[0]).toContain("it runs from BAT.+ to a stowed end");
});
