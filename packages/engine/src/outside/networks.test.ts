/** Worked examples of direct-current networks out of handbooks (reference/electrical/networks.json names each). */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { NetworkCar, type NetworkPart } from "./network-car.test-helper.js";

interface Answer {
	readonly what: string;
	readonly of: readonly string[];
	/** Empty where the source gives inputs only. */
	readonly value: number | "";
}

interface Example {
	readonly id: string;
	readonly title: string;
	readonly parts: readonly NetworkPart[];
	readonly answers: readonly Answer[];
}

/** The handbooks round to three or four digits. */
const ROUNDING = 0.003;

const file = new URL("../../../../reference/electrical/networks.json", import.meta.url);
const examples = JSON.parse(readFileSync(file, "utf8")) as Example[];

function computed(car: NetworkCar, { what, of }: Answer): number {
	const [one, two = "0"] = of as [string, string?];
	if (what.startsWith("voltage between contacts")) return car.volts(one, two);
	if (what === "current through part") return car.amps(one);
	if (what === "magnitude of current through part") return Math.abs(car.amps(one));
	if (what === "total power") return car.watts();
	if (what === "resistance between contacts") return car.ohms(...car.part(one).between);
	throw new Error(`what is '${what}'?`);
}

const published = examples
	.map((example) => ({ ...example, answers: example.answers.filter(({ value }) => value !== "") }))
	.filter(({ answers }) => answers.length > 0);

it("every sort of published answer is among the examples", () => {
	expect(published.length).toBeGreaterThanOrEqual(20);
	expect(new Set(published.flatMap(({ answers }) => answers.map(({ what }) => what))).size).toBe(5);
});

describe.each(published)("$id $title", ({ parts, answers }) => {
	const car = new NetworkCar(parts);
	it.each(answers)("$what of $of: $value", (answer) => {
		const value = Number(answer.value);
		expect(Math.abs(computed(car, answer) - value)).toBeLessThanOrEqual(ROUNDING * Math.abs(value));
	});
});
