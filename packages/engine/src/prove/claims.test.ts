import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { operate, probeValue } from "../circuit/index.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { covers, leastCover } from "./cover/brute-force.test-helper.js";
import { cover } from "./cover/cover.js";
import { askCar } from "./question.js";
import { randomCar } from "./random-car.test-helper.js";
import { proveSheet } from "./sheet.js";
import { carOf } from "./tiny-car.test-helper.js";
import type { Provable, ProveSheet } from "./types.js";

const options = { leastOhms: 1, leastPrior: 0 };

/**
 * Takes faults evenly spread over those that are caught; for each, every way of it that some offered reading catches
 * must bring a row that claims it out of its limits, by a full solve of the whole circuit.
 */
function checkClaims(car: Provable, sheet: ProveSheet, every: number): number {
	const { circuit, faults, ways, changeOf, caughtBy } = askCar(car, options);
	const rows = sheet.parts.flatMap((part) => part.rows);
	let checked = 0;
	ways.forEach((way, w) => {
		const { id } = faults[way.fault]!;
		if (w % every !== 0 || caughtBy[changeOf[w]!]!.length === 0) return;
		const claiming = rows.filter((row) => row.catches.includes(id));
		const outside = claiming.some(({ question, low, high }) => {
			const point = operate(circuit, circuit.standing(question.when), { change: way.change, dead: true });
			const [a, b] = [circuit.node(question.from)!, circuit.node(question.to)!];
			const ohms = probeValue(point, { kind: "ohms", a, b });
			const read = Number.isNaN(ohms) ? Number.POSITIVE_INFINITY : ohms;
			return high === undefined ? read < low : read < low || read > high;
		});
		expect(outside, `${id} ${way.at}`).toBe(true);
		checked++;
	});
	return checked;
}

describe("what a sheet claims to catch leaves the limits of its row", () => {
	test("of the small demo car, every fault", () => {
		const car = demoCar("small");
		expect(checkClaims(car, proveSheet(car), 1)).toBeGreaterThan(250);
	});

	test("of the main demo car, a sample", () => {
		const car = demoCar("main");
		expect(checkClaims(car, proveSheet(car), 97)).toBeGreaterThan(40);
	});

	test("of random looms, every fault", () => {
		fc.assert(
			fc.property(randomCar, (car) => {
				expect(checkClaims(car, proveSheet(car), 1)).toBeGreaterThan(20);
			}),
			{ seed: 23, numRuns: 12 },
		);
	});
});

describe("as few as can be", () => {
	test("of up to 12 readings offered on random looms, against trying every set of them", () => {
		fc.assert(
			fc.property(randomCar, fc.infiniteStream(fc.nat()), (car, random) => {
				const { candidates, caughtBy, sound } = askCar(car, options);
				const known = [...candidates.keys()].filter((k) => sound[k] !== undefined);
				const some = new Set<number>();
				for (const draw of random) {
					some.add(known[draw % known.length]!);
					if (some.size >= Math.min(12, known.length)) break;
				}
				const columns = [...some].sort((x, y) => x - y);
				const rows = caughtBy.map((by) => by.flatMap((k) => (some.has(k) ? [columns.indexOf(k)] : [])));
				const problem = { rows, columns: columns.length };
				const { chosen, lowerBound } = cover(problem);
				const least = leastCover(problem);
				expect(covers(problem, chosen)).toBe(true);
				expect([chosen.length, lowerBound]).toEqual([least, least]);
			}),
			{ seed: 29, numRuns: 40 },
		);
	});

	test("readings never need be more where more may hide", () => {
		const { converted } = demoCar("small");
		const sizes = [0.5, 1, 10, 100].map((leastOhms) => proveSheet(carOf(converted), { leastOhms }));
		const detectable = sizes.map(({ coverage }) => coverage.detectable);
		expect(detectable).toEqual([...detectable].sort((x, y) => x - y));
	});
});
