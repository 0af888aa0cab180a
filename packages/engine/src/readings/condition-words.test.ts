import { expect, test } from "vitest";
import type { Loom } from "../loom/index.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { conditionWords } from "./condition-words.js";

const loom = demoCar("small").converted;
const words = (when: string, of: Loom = loom) => conditionWords(of, when);

test("a listed condition by its title; one said in place by its settings, alike ones together", () => {
	expect(words("key-on")).toBe(loom.conditions.get("key-on")!.title);
	expect(words("never-heard-of")).toBe("never-heard-of");
	expect(words("BAT=on; BAT=off; X-CU=unmated; S-KEY=run")).toBe("BAT off; X-CU off; S-KEY run");
	expect(words("key-on; F1=pulled")).toBe(`${loom.conditions.get("key-on")!.title}; F1 out`);
	const fuses = ["F1", "F2", "F3", "F4"].map((id) => `${id}=pulled`).join("; ");
	const more = new Map([
		...loom.parts,
		...["F2", "F3", "F4"].map((id) => [id, loom.parts.get("F1")!] as const),
	]);
	expect(words(`BAT=off; ${fuses}`, { ...loom, parts: more })).toBe("BAT off; 4 fuses out");
});
