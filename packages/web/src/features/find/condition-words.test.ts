import { expect, test } from "vitest";
import { smallLoom } from "../../drawing/small-car.test-helper.js";
import { conditionWords, plainConditions } from "./condition-words.js";

const loom = smallLoom();

test("a listed condition by its title; one said in place by its settings, alike ones together", () => {
	expect(conditionWords(loom, "lamp-on")).toBe("lamp on");
	expect(conditionWords(loom, "never-heard-of")).toBe("never-heard-of");
	expect(conditionWords(loom, "BAT=on; BAT=off; X1=unmated; S1=on")).toBe("BAT off; X1 off; S1 on");
	expect(conditionWords(loom, "lamp-on; F1=pulled")).toBe("lamp on; F1 out");
	const fuses = ["F1", "F2", "F3", "F4"].map((id) => `${id}=pulled`).join("; ");
	const more = new Map([
		...loom.parts,
		...["F2", "F3", "F4"].map((id) => [id, loom.parts.get("F1")!] as const),
	]);
	expect(conditionWords({ ...loom, parts: more }, `BAT=off; ${fuses}`)).toBe("BAT off; 4 fuses out");
});

test("sentences with such conditions in them", () => {
	const text = "ohms A to B in BAT=off; X1=unmated; S1=on: open; C to D in BAT=off; X1=unmated: 3 ohm";
	const whens = ["BAT=off; X1=unmated", "BAT=off; X1=unmated; S1=on", "rest"];
	expect(plainConditions(text, loom, whens)).toBe(
		"ohms A to B in BAT off; X1 off; S1 on: open; C to D in BAT off; X1 off: 3 ohm",
	);
});
