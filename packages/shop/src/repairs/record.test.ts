import { expect, test } from "vitest";
import { done, history, type Line, takenBack } from "../people/history.test-helper.js";
import type { Written } from "../store/entry/kinds.js";
import { doneBy, recordOf, repairsOf } from "./record.js";

const repaired = (steps: string[] = [], worked = ""): Written => ({
	kind: "repair",
	body: { fault: "open:wire:W1", kind: "open", where: "wire W1", steps, worked },
});
const carAccepted: Written = { kind: "acceptance", body: { by: "The customer", text: "driven" } };
const kim: Line = { by: "Kim" };
const lee: Line = { by: "Lee" };

test("a car counts from its first repair on, or once it is accepted", () => {
	const jobs = new Map([
		["mended", history([kim, repaired()], [lee, repaired(["7"], "Kim")])],
		["accepted", history([kim, carAccepted])],
		["under work", history([kim, done("recipe/7")])],
	]);
	const { cars, repairs } = repairsOf(jobs);
	expect(cars).toBe(2);
	expect(repairs.map(({ job, person, worked }) => [job, person, worked])).toEqual([
		["mended", "Kim", ""],
		["mended", "Lee", "Kim"],
	]);
	expect(recordOf(repairsOf(jobs)).repairs).toEqual([
		{ kind: "open", touched: false, person: "" },
		{ kind: "open", touched: true, person: "Kim" },
	]);
});

test("taken back it counts no more, and its car neither; the correction taken back, it counts again", () => {
	const one = [[kim, repaired()] as const, [kim, takenBack("e1")] as const];
	const out = repairsOf(new Map([["job", history(...one)]]));
	expect(out).toMatchObject({ cars: 0, work: [], repairs: [{ entry: "e1", takenBack: "e2" }] });
	expect(recordOf(out)).toEqual({ cars: 0, work: [], repairs: [] });
	const again = repairsOf(new Map([["job", history(...one, [kim, takenBack("e2")])]]));
	expect(recordOf(again)).toMatchObject({ cars: 1, repairs: [{ kind: "open" }] });
});

test("who did the steps: the last to say so; shares of each counted car", () => {
	const steps = history(
		[kim, done("recipe/1")],
		[kim, done("recipe/2")],
		[lee, done("recipe/2")],
		[lee, done("recipe/3")],
		[lee, done("own step")],
		[kim, done("recipe/4")],
		[lee, takenBack("e4")],
		[lee, repaired()],
	);
	expect([...doneBy(steps)]).toEqual([
		["1", "Kim"],
		["2", "Lee"],
		["4", "Kim"],
	]);
	const { work } = repairsOf(
		new Map([
			["a", steps],
			["b", history([kim, done("recipe/1")])],
		]),
	);
	expect(work).toEqual([
		{ person: "Kim", cars: expect.closeTo(2 / 3, 12) },
		{ person: "Lee", cars: expect.closeTo(1 / 3, 12) },
	]);
});
