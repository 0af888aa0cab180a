/** One wrong reading among many right ones: taken once more before anything is suspected. Battery off: ohms alone. */
import { describe, expect, test } from "vitest";
import { takeReading } from "../readings/index.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { Finder } from "./find.js";
import { parseEvidence } from "./parse-evidence.js";
import type { Evidence, TakenReading } from "./types.js";

const car = demoCar("small");
const finder = new Finder(car, "converted", true);
const circuit = car.circuit("converted");
const contacts = [...circuit.loom.contacts.keys()].filter((id) => !id.startsWith("BAT"));
const when = "BAT=off; X-CU=unmated";
/** Ohms to the battery's clamp as a sound car shows them. */
const sound = contacts.slice(0, 14).map((from): TakenReading => {
	const question = { what: "ohms", from, to: "BAT.-", when } as const;
	return { ...question, value: takeReading(circuit, question).value ?? "open" };
});
const wrong = sound.findIndex(({ value }) => value !== "open" && value < 1);
const evidence = (...occasions: (readonly TakenReading[])[]): Evidence => ({
	...{ title: "", of: "converted", battery: "off" },
	occasions: occasions.map((readings) => ({
		...{ note: "", reseated: "", codes: undefined, units: [], functions: {}, bench: {} },
		readings,
	})),
});
const off = sound.map((reading, k): TakenReading => (k === wrong ? { ...reading, value: "open" } : reading));

describe("one wrong reading", () => {
	const first = finder.find(evidence(off));

	test("is asked for once more, with its reason", () => {
		expect(first.sound).toBeGreaterThan(first.faults[0]!.posterior);
		const { next } = first;
		expect(next).toMatchObject({ again: true, question: { from: sound[wrong]!.from, when } });
		expect(next!.text).toMatch(/^Once more: Ohms from/);
		expect(next!.because).toMatch(/it showed open, which a sound loom does not/);
		expect(next!.outcomes.map(({ favours }) => favours)).toEqual([first.faults[0]!.where, "a sound loom"]);
		expect(next!.bits).toBeGreaterThan(0);
		expect(first.settled).toBe(false);
	});

	test("read the same again and again it is a fault; read right it is not asked for once more", () => {
		const chances = [1, 2, 3].map((times) => {
			const {
				sound: chance,
				next,
				faults,
			} = finder.find(evidence(off, ...Array.from({ length: times }, () => [off[wrong]!])));
			expect(next?.again ?? false).toBe(chance > faults[0]!.posterior);
			return chance;
		});
		expect(chances[0]!).toBeLessThan(first.sound);
		expect(chances[2]!).toBeLessThan(0.1);
		const right = finder.find(evidence(off, [sound[wrong]!]));
		expect(right.sound).toBeGreaterThan(first.sound);
		expect(right.next?.again ?? false).toBe(false);
	});

	test("none wrong: nothing is asked for once more", () => {
		expect(finder.find(evidence(sound)).next?.again ?? false).toBe(false);
	});
});

describe("the battery must stay off", () => {
	const broken = parseEvidence('{"battery": "off", "occasions": [{"codes": ["B1A02"]}]}', "");
	const offered = ({ next, others }: ReturnType<Finder["find"]>) =>
		[...(next ? [next] : []), ...others].map(({ question }) => question.what);

	test("only ohms are offered, and only they would refute", () => {
		const found = finder.find(broken);
		expect(new Set(offered(found))).toEqual(new Set(["ohms"]));
		const { notTaken, refutes } = finder.explain(broken, found.faults[0]!.id);
		for (const { question } of [...notTaken, ...refutes]) expect(question.what).toBe("ohms");
	});

	test("with it on, others are", () => {
		expect(offered(finder.find({ ...broken, battery: undefined }))).toContain("volts");
	});
});
