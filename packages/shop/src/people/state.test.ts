import { describe, expect, test } from "vitest";
import type { Standing } from "../store/entry/append.js";
import { abilitiesOf, PRACTICE } from "./abilities.js";
import { accepted, done, FOUND, held, history, lifted, signed, takenBack } from "./history.test-helper.js";
import { jobState, supervised } from "./state.js";

const alone = (sort = "wiring"): Standing => ({ role: "technician", sort, ability: "alone" });
const second = (sort = "wiring"): Standing => ({ role: "apprentice", sort, ability: "second" });
const only = (entries: ReturnType<typeof history>) => jobState(entries).steps[0]!;

describe("a step", () => {
	test("done and signed by one who may sign alone is complete", () => {
		const step = only(
			history([{ by: "Kim" }, done("recipe/1")], [{ by: "Kim", standing: alone() }, signed("recipe/1")]),
		);
		expect(step).toMatchObject({ sort: "wiring", needs: 1, complete: true, missing: "" });
	});

	test.each([
		["not said to be done", [[{ by: "Kim", standing: alone() }, signed("s")]], "nobody has said"],
		["not signed", [[{ by: "Kim", standing: alone() }, done("s")]], "nobody has signed"],
		[
			"signed by an apprentice only",
			[
				[{ by: "Lee" }, done("s")],
				[{ by: "Lee", standing: second() }, signed("s")],
			],
			"someone who may sign alone",
		],
		[
			"critical, and signed twice by one person",
			[
				[{ by: "Kim" }, done("s")],
				[{ by: "Kim", standing: alone("brakes") }, signed("s")],
				[{ by: "Kim", standing: alone("brakes") }, signed("s")],
			],
			"a second person",
		],
	] as const)("%s is not complete", (_what, lines, missing) => {
		const step = only(history(...lines));
		expect([step.complete, step.missing]).toEqual([false, expect.stringContaining(missing)]);
	});

	test("critical needs two people, one of whom may sign alone", () => {
		const step = only(
			history(
				[{ by: "Lee" }, done("s")],
				[{ by: "Lee", standing: second("fuel") }, signed("s")],
				[{ by: "Kim", standing: alone("fuel") }, signed("s")],
			),
		);
		expect(step).toMatchObject({ needs: 2, complete: true });
	});

	test("a correction takes a signature back; one taken back itself takes nothing back", () => {
		const lines = [
			[{ by: "Kim" }, done("s")],
			[{ by: "Kim", standing: alone() }, signed("s")],
			[{ by: "Kim" }, takenBack("e2")],
		] as const;
		expect(only(history(...lines)).missing).toBe("nobody has signed");
		expect(only(history(...lines, [{ by: "Kim" }, takenBack("e3")])).complete).toBe(true);
		expect(jobState(history(...lines)).corrected).toEqual({ e2: "e3" });
	});

	test("a hold on it, or on the whole job, keeps it open until it is lifted", () => {
		for (const step of ["s", undefined]) {
			const lines = [
				[{ by: "Kim" }, done("s")],
				[{ by: "Kim", standing: alone() }, signed("s")],
				[{ by: "Lee" }, held(step)],
			] as const;
			expect(only(history(...lines)).missing).toBe("on hold: wrong part");
			expect(only(history(...lines, [{ by: "Kim" }, lifted("e3")])).complete).toBe(true);
		}
	});
});

describe("acceptances", () => {
	const role: Standing = { role: "technician" };

	test("of a finding stand with who, when and why, apart from those of the car, until they are taken back", () => {
		const lines = [
			[{ by: "Kim", standing: role, time: "2030-01-01T08:00:00Z" }, accepted("the trailer needs it")],
			[
				{ by: "Kim", standing: role },
				{ kind: "acceptance", body: { by: "the customer", text: "driven" } },
			],
		] as const;
		const { acceptedFindings, accepted: ofCar } = jobState(history(...lines));
		expect(acceptedFindings).toEqual([
			{
				...{ ...FOUND, text: "the trailer needs it", entry: "e1", person: "Kim", account: "kim" },
				...{ role: "technician", time: "2030-01-01T08:00:00Z" },
			},
		]);
		expect(ofCar).toEqual(["e2"]);
		const withdrawn = jobState(history(...lines, [{ by: "Kim" }, takenBack("e1")]));
		expect([withdrawn.acceptedFindings, withdrawn.corrected]).toEqual([[], { e1: "e3" }]);
	});
});

describe("clashes", () => {
	test("two who did not know of each other say they did one step: both stay, the clash shows until one looks", () => {
		const lines = [
			[{ by: "Kim", seen: 0, counter: 1 }, done("s")],
			[{ by: "Lee", seen: 0, counter: 1 }, done("s")],
		] as const;
		const open = jobState(history(...lines));
		expect(open.steps[0]?.done.length).toBe(2);
		expect(open.clashes).toEqual([{ step: "s", entries: ["e1", "e2"], people: ["Kim", "Lee"], settled: "" }]);
		const settled = jobState(history(...lines, [{ by: "Kim", standing: alone() }, signed("s")]));
		expect(settled.clashes[0]?.settled).toBe("e3");
		expect(jobState(history(...lines, [{ by: "Lee" }, takenBack("e2")])).clashes).toEqual([]);
	});

	test("one after the other, two sign-offs, or one tablet's own: no clash", () => {
		const none = [
			history([{ by: "Kim" }, done("s")], [{ by: "Lee", seen: 1 }, done("s")]),
			history([{ by: "Kim", seen: 0 }, signed("s")], [{ by: "Lee", seen: 0 }, signed("s")]),
			history(
				[{ by: "Kim", seen: 0, counter: 1 }, done("s")],
				[{ by: "Kim", seen: 0, counter: 2 }, done("s")],
			),
			history([{ by: "Kim", seen: 0 }, done("s")], [{ by: "Lee", seen: 0 }, done("t")]),
		];
		for (const entries of none) expect(jobState(entries).clashes).toEqual([]);
	});

	test("a clock that is years off changes nothing", () => {
		const lines = (time: string) =>
			history([{ by: "Kim", time }, held("s")], [{ by: "Lee", time: "2030-01-01T00:00:00Z" }, lifted("e1")]);
		const [early, late] = ["1999-01-01T00:00:00Z", "2060-01-01T00:00:00Z"].map((time) =>
			jobState(lines(time)),
		);
		expect(early!.holds[0]?.lifted).toBe("e2");
		expect(late!.holds[0]?.lifted).toBe("e2");
	});
});

describe("the matrix", () => {
	const practised = (count: number) =>
		history(
			...Array.from({ length: count }, (_, k) => k).flatMap((k) => [
				[{ by: "Lee" }, done(`s${k}`)] as const,
				[{ by: "Lee", standing: second() }, signed(`s${k}`)] as const,
				[{ by: "Kim", standing: alone() }, signed(`s${k}`)] as const,
			]),
		);

	test("fills from steps signed under supervision, over all jobs", () => {
		const counts = supervised("lee", [practised(2), practised(3)]);
		expect([...counts]).toEqual([["wiring", 5]]);
		expect([...supervised("kim", [practised(2)])]).toEqual([]);
		const row = (count: number) =>
			abilitiesOf("apprentice", new Map(), new Map([["wiring", count]])).find(
				({ sort }) => sort === "wiring",
			);
		expect(row(PRACTICE - 1)).toMatchObject({ ability: "second", because: "role" });
		expect(row(PRACTICE)).toMatchObject({ ability: "alone", because: "practice" });
	});

	test("practice never opens a critical step to an apprentice; the owner may, and has the last word", () => {
		const of = (set: [string, "alone" | "second" | "not yet"][]) =>
			abilitiesOf("apprentice", new Map(set), new Map([["brakes", 99]])).find(
				({ sort }) => sort === "brakes",
			);
		expect(of([])).toMatchObject({ ability: "not yet", critical: true, supervised: 99 });
		expect(of([["brakes", "second"]])).toMatchObject({ ability: "second", because: "owner" });
		expect(abilitiesOf("technician", new Map(), new Map()).every(({ ability }) => ability === "alone")).toBe(
			true,
		);
	});
});
