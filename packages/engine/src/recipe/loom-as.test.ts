import { expect, test } from "vitest";
import type { FunctionNeed, Loom, Monitor } from "../loom/index.js";
import { bench } from "./bench.test-helper.js";
import { loomAs } from "./loom-as.js";

const monitor = (code: string, more: Partial<Monitor> = {}): Monitor => ({
	code,
	unit: "E1",
	title: "",
	measures: "volts",
	contact: "E1.1",
	reference: "",
	when: "run",
	twin: "",
	ratio: 1,
	of: "",
	below: 0.5,
	above: undefined,
	note: "",
	...more,
});

const need = (name: string, more: Partial<FunctionNeed> = {}): FunctionNeed => ({
	function: name,
	title: "",
	when: "run",
	measures: "volts",
	contact: "E1.1",
	reference: "",
	low: 9,
	high: undefined,
	of: "",
	...more,
});

const loom: Loom = {
	...bench,
	conditions: new Map([
		[
			"run",
			{
				id: "run",
				title: "",
				like: "",
				settings: new Map([
					["BAT", "on"],
					["C1", "mated"],
					["E1.1", "on"],
					["S9", "down"],
					["S9.a", "on"],
				]),
			},
		],
	]),
	monitors: [
		monitor("both"),
		monitor("before", { of: "delivered" }),
		monitor("behind", { of: "converted", contact: "E1.1!pin" }),
		monitor("no unit", { unit: "S9" }),
		monitor("no contact", { contact: "S9.a" }),
		monitor("no reference", { reference: "S9.a" }),
		monitor("no twin", { twin: "S9.a!pin" }),
		monitor("all there", { reference: "E1.2", twin: "T1.1" }),
	],
	functions: [
		need("both"),
		need("before", { of: "delivered" }),
		need("behind", { of: "converted" }),
		need("no contact", { contact: "S9.a" }),
		need("no reference", { reference: "S9.a" }),
	],
};

test.each([
	["delivered", ["both", "before", "all there"], ["both", "before"]],
	["converted", ["both", "behind", "all there"], ["both", "behind"]],
] as const)("as %s: rows of that stage, with all they name there", (stage, codes, functions) => {
	const held = loomAs(loom, stage);
	expect(held.monitors.map((row) => row.code)).toEqual(codes);
	expect(held.functions.map((row) => row.function)).toEqual(functions);
	expect(held.wires).toBe(loom.wires);
});

test("conditions set only what is there", () => {
	expect([...loomAs(loom, "delivered").conditions.get("run")!.settings.keys()]).toEqual([
		"BAT",
		"C1",
		"E1.1",
	]);
});

test("doing it twice changes nothing more", () => {
	const once = loomAs(loom, "converted");
	expect(loomAs(once, "converted")).toEqual(once);
});
