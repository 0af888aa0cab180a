import { openCar, powerUp, type Stage } from "@loomwright/engine";
import { expect, test } from "vitest";
import { SMALL_CAR } from "../../drawing/small-car.test-helper.js";
import { actsOfStage, missing, type PowerWork, reached, readingKey, seenKey } from "./stages.js";

const stages = powerUp(openCar(SMALL_CAR));
const NOTHING: PowerWork = { read: {}, seen: [], passed: [] };

/** All of a stage as on a sound car. */
const sound = (stage: Stage, { read, seen, passed }: PowerWork): PowerWork => ({
	read: {
		...read,
		...Object.fromEntries(
			stage.read.map((reading) => [
				readingKey(stage, reading),
				reading.value ?? (reading.unit === "ohm" ? "open" : 0),
			]),
		),
	},
	seen: [...seen, ...stage.mustBeTrue.map((text) => seenKey(stage, text))],
	passed: [...passed, stage.title],
});

test("each stage opens only when the one before holds", () => {
	expect(stages.length).toBeGreaterThan(3);
	let work = NOTHING;
	stages.forEach((stage, k) => {
		expect(reached(stages, work, true)).toBe(k);
		expect(missing(stage, work, true)).not.toEqual([]);
		work = sound(stage, work);
		expect(missing(stage, work, true)).toEqual([]);
	});
	expect(reached(stages, work, true)).toBe(stages.length);
	expect(reached(stages, { ...work, passed: work.passed.slice(0, -1) }, true)).toBe(stages.length - 1);
	expect(reached(stages, work, false)).toBe(0);
});

test("one reading outside its limits, or one thing not seen, keeps the gate shut", () => {
	const all = stages.reduce((work, stage) => sound(stage, work), NOTHING);
	const at = stages.findIndex(({ kind }) => kind === "battery");
	const stage = stages[at]!;
	const wrong = { ...all, read: { ...all.read, [readingKey(stage, stage.read[0]!)]: 3 } };
	expect(reached(stages, wrong, true)).toBe(at);
	expect(missing(stage, wrong, true)).toEqual(["1 reading is not right"]);
	const unseen = { ...all, seen: all.seen.filter((key) => key !== seenKey(stage, stage.mustBeTrue[0]!)) };
	expect(missing(stage, unseen, true)).toEqual(["1 thing to see"]);
	expect(missing(stages[0]!, all, false)).toEqual(["the prove sheet is not through"]);
});

test("readings go on to finding, but for those with the test lamp in the line", () => {
	const all = stages.reduce((work, stage) => sound(stage, work), NOTHING);
	for (const stage of stages) {
		const asked = stage.read.filter(({ question }) => question !== undefined).length;
		expect(actsOfStage(stage, all).length).toBe(asked === 0 ? 0 : asked + 1);
	}
	expect(actsOfStage(stages.find(({ kind }) => kind === "test lamp")!, all)).toEqual([]);
});
