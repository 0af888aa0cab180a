import { expect, test } from "vitest";
import { after, refused, run, step } from "../bench.test-helper.js";

const row = { fresh: "L1", from: "K1.85", to: "K1.86", mm2: 1, metres: 0.1 };

test("links two contacts, also where a wire is already", () => {
	const { loom, misfits, touched } = after(step("bridge", row));
	expect(misfits).toEqual([]);
	expect(run(loom, "L1")).toBe("K1.85 -> K1.86");
	expect(run(loom, "W4")).toBe("S1 -> K1.85");
	// a relay is its own connector
	expect([...touched.connectors.keys()]).toEqual(["K1"]);
});

test("misfits", () => {
	expect(refused(step("bridge"))).toHaveLength(5);
	expect(refused(step("bridge", { ...row, to: "K1.85" }))[0]).toContain("K1.85 is the first contact too");
	expect(refused(step("bridge", { ...row, to: "G1" }))[0]).toContain("G1 is a joint");
	expect(refused(step("bridge", { ...row, fresh: "W1" }))).toHaveLength(1);
});
