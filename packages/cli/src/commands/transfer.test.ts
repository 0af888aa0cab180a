import { cpSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { compareSchema, transferSchema } from "@loomwright/shop";
import { expect, onTestFinished, test } from "vitest";
import { ROOT, SMALL_CAR, said } from "../terminal.test-helper.js";

const MAIN = join(ROOT, "demo/main");
const OTHER = join(ROOT, "demo/other-market");

test("to its own car: all applies, exit code 0", async () => {
	const { code, out } = await said(["transfer", SMALL_CAR, SMALL_CAR]);
	expect([code, out]).toEqual([
		0,
		expect.stringMatching(/7 of 7 steps apply, 0 need a decision, 0 cannot be done/),
	]);
});

test("to the other market, as text: what to decide and what cannot be done, with why", async () => {
	const { code, out } = await said(["transfer", MAIN, OTHER]);
	expect(code).toBe(1);
	expect(out).toMatch(/^The recipe of The camper on The camper, other market: \d+ of 68 steps apply/);
	expect(out).toContain("W170a: length was 0.9 m, here 1.8 m (length)");
	expect(out).toContain("X-BD.36b is taken here by W762a (headlamp levelling) (taken)");
	expect(out).toContain("B-VSS is not in this car (absent)");
});

test("as JSON, with the differences of the cars", async () => {
	const { code, out } = await said(["transfer", MAIN, OTHER, "--json"]);
	const { counts, steps, differences, left } = transferSchema.strict().parse(JSON.parse(out));
	expect([code, counts.applies + counts.decide + counts["not here"]]).toEqual([1, steps.length]);
	expect(counts.decide).toBeGreaterThanOrEqual(3);
	expect(counts["not here"]).toBeGreaterThanOrEqual(3);
	expect(left).toEqual([]);
	expect(differences.map(({ contact }) => contact)).toContain("X-BD.36a");
});

test("a draft for the other car, written where it is told: with that car's tables every step of it fits", async () => {
	const folder = mkdtempSync(join(tmpdir(), "loomwright-draft-"));
	onTestFinished(() => rmSync(folder, { recursive: true }));
	cpSync(OTHER, folder, { recursive: true });
	await said(["transfer", MAIN, OTHER, "--out", folder]);
	const { code, out } = await said(["compare", folder, "--json"]);
	expect([code, compareSchema.parse(JSON.parse(out)).misfits]).toEqual([0, []]);
	expect(readFileSync(join(folder, "recipe.csv"), "utf8")).toContain("to decide: W170a: size was");
});
