import fc from "fast-check";
import { expect, test } from "vitest";
import type { Loom, RecipeStep, WireEnd } from "../loom/index.js";
import { type Applied, applyRecipe } from "./apply.js";
import { newParts, tables } from "./bench.test-helper.js";
import { anyDraws, anyLoom, drawRecipe } from "./random-recipe.test-helper.js";

const settings = { seed: 20, numRuns: 150 };

/** Checks a property of each step of random recipes: the loom before it, the step, what it gave. */
function forEachStep(
	fitsOnly: boolean,
	check: (before: Loom, step: RecipeStep, applied: Applied) => void,
): void {
	fc.assert(
		fc.property(anyLoom, anyDraws, (loom, draws) => {
			let now = loom;
			for (const step of drawRecipe(loom, draws, fitsOnly)) {
				const applied = applyRecipe(now, [step], newParts);
				check(now, step, applied);
				now = applied.loom;
			}
		}),
		settings,
	);
}

const ends = (loom: Loom): WireEnd[] => [...loom.wires.values()].flatMap((wire) => [wire.from, wire.to]);

const count = (loom: Loom) => {
	const all = ends(loom);
	const loose = all.filter((end) => end.at === "loose");
	return {
		wires: loom.wires.size,
		bare: loose.filter((end) => !end.insulated).length,
		stowed: loose.filter((end) => end.insulated).length,
		contact: all.filter((end) => end.at === "contact").length,
		joint: all.filter((end) => end.at === "joint").length,
		joints: loom.joints.size,
		metres: [...loom.wires.values()].reduce((sum, wire) => sum + wire.metres, 0),
	};
};

test("steps drawn to fit do fit", () => {
	const seen = new Set<string>();
	forEachStep(true, (_before, step, { misfits }) => {
		expect(misfits.map((found) => found.text)).toEqual([]);
		seen.add(step.kind);
	});
	expect(seen.size).toBe(10);
});

test("a step that does not fit leaves loom and touches as they were, and says so of itself", () => {
	let unfit = 0;
	forEachStep(false, (before, step, { loom, misfits, touched }) => {
		if (misfits.length === 0) return;
		unfit++;
		expect(tables(loom)).toEqual(tables(before));
		expect(Object.values(touched).every((map) => map.size === 0)).toBe(true);
		for (const found of misfits) {
			expect(found).toMatchObject({ step: step.step, kind: step.kind, row: step.row });
			expect(found.text.startsWith(`step ${step.step} '${step.kind}': ${found.column}: `)).toBe(true);
		}
	});
	expect(unfit).toBeGreaterThan(100);
});

test("every end a step makes, moves or frees is accounted for, and no copper is lost", () => {
	forEachStep(true, (before, step, { loom }) => {
		const was = count(before);
		const is = count(loom);
		const change = {
			wires: is.wires - was.wires,
			loose: is.bare + is.stowed - was.bare - was.stowed,
			seated: is.contact + is.joint - was.contact - was.joint,
			joints: is.joints - was.joints,
		};
		expect(change).toEqual(ledger(step, before));
		const laid = change.wires > 0 && !(step.kind === "cut" || step.kind === "join") ? step.metres! : 0;
		expect(is.metres - was.metres).toBeCloseTo(laid, 5);
	});
});

/** What each kind of step does to the numbers of wires, loose ends, ends at contacts or joints, and joints. */
function ledger(step: RecipeStep, before: Loom) {
	const entry = (wires: number, loose: number, seated: number, joints: number) => ({
		wires,
		loose,
		seated,
		joints,
	});
	const atPart = ends(before).filter(
		(end) => end.at === "contact" && before.contacts.get(end.contact)?.part === step.part,
	).length;
	switch (step.kind) {
		case "cut":
			return typeof step.at === "object" ? entry(1, 2, 0, 0) : entry(0, 1, -1, 0);
		case "extend":
			return entry(1, -1, 3, 1);
		case "join":
			if (step.to !== "") return entry(0, -1, 1, 0);
			return step.at === undefined ? entry(0, -2, 2, 1) : entry(1, -1, 3, 1);
		case "add wire":
		case "bridge":
			return entry(1, 0, 2, 0);
		case "tie to ground":
			return step.wire !== "" ? entry(0, -1, 1, 0) : entry(1, 0, 2, 0);
		case "remove part":
			return entry(0, atPart, 0 - atPart, 0);
		case "fit part":
			return entry(0, 0, 0, newParts.joints.has(step.part) ? 1 : 0);
		default:
			return entry(0, 0, 0, 0);
	}
}

test("all that a wire or contact names is in the loom", () => {
	forEachStep(false, (_before, _step, { loom }) => {
		for (const end of ends(loom)) {
			if (end.at === "contact") expect(loom.contacts.has(end.contact)).toBe(true);
			if (end.at === "joint") expect(loom.joints.has(end.joint)).toBe(true);
		}
		for (const { part, connector } of loom.contacts.values())
			expect([part, connector].every((id) => id === "" || loom.parts.has(id))).toBe(true);
		for (const [id, wire] of loom.wires) {
			expect(wire.id).toBe(id);
			expect(wire.metres).toBeGreaterThan(0);
		}
	});
});

test("the same every time, in one go or step by step, and the loom put in is not changed", () => {
	fc.assert(
		fc.property(anyLoom, anyDraws, (loom, draws) => {
			const recipe = drawRecipe(loom, draws, false);
			const before = JSON.stringify(tables(loom));
			const once = applyRecipe(loom, recipe, newParts);
			expect(tables(applyRecipe(loom, recipe, newParts).loom)).toEqual(tables(once.loom));
			expect(JSON.stringify(tables(loom))).toBe(before);
			const byStep = recipe.reduce((now, step) => applyRecipe(now, [step], newParts).loom, loom);
			expect(tables(byStep)).toEqual(tables(once.loom));
			const last = recipe.at(-1)?.step;
			if (last)
				expect(tables(applyRecipe(loom, recipe, newParts, { upTo: last }).loom)).toEqual(tables(once.loom));
		}),
		settings,
	);
});

test("leaving a step out is the recipe without its row", () => {
	fc.assert(
		fc.property(anyLoom, anyDraws, fc.nat(), (loom, draws, n) => {
			const recipe = drawRecipe(loom, draws, true);
			const left = recipe[n % Math.max(1, recipe.length)];
			if (!left) return;
			const applied = applyRecipe(loom, recipe, newParts, { without: new Set([left.step]) });
			const rest = recipe.filter((step) => step !== left);
			const expected = applyRecipe(loom, rest, newParts);
			expect(tables(applied.loom)).toEqual(tables(expected.loom));
			expect(applied.touched).toEqual(expected.touched);
			expect(applied.misfits.map((found) => found.step)).toEqual(expected.misfits.map((found) => found.step));
		}),
		settings,
	);
});

test("an end that is elsewhere after a step was touched by it, with both places and their connectors", () => {
	forEachStep(true, (before, step, { loom, touched }) => {
		for (const [id, wire] of before.wires)
			for (const side of ["from", "to"] as const) {
				const now = loom.wires.get(id)![side];
				if (JSON.stringify(now) === JSON.stringify(wire[side])) continue;
				expect(touched.wires.get(id)).toEqual([step.step]);
				expect(touched.ends.get(`${id}@${side}`)).toEqual([step.step]);
				const split = typeof step.at === "object";
				for (const end of split ? [now] : [now, wire[side]]) {
					if (end.at === "joint") expect(touched.joints.get(end.joint)).toEqual([step.step]);
					if (end.at !== "contact") continue;
					expect(touched.contacts.get(end.contact)).toEqual([step.step]);
					const connector = before.contacts.get(end.contact)?.connector || "K1";
					if (end.contact !== "BAT.+") expect(touched.connectors.get(connector)).toEqual([step.step]);
				}
			}
	});
});
