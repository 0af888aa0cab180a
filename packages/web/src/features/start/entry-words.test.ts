import { expect, test } from "vitest";
import { smallLoom } from "../../drawing/small-car.test-helper.js";
import { entryWords } from "./entry-words.js";

const loom = smallLoom();
const words = (kind: string, body: unknown) => entryWords({ kind, body }, loom);

test("each kind of entry is told in words", () => {
	const reading = { what: "volts", from: "L1.a", to: "L1.b", when: "lamp-on", value: 12.04 };
	expect(words("reading", reading)).toEqual({ sort: "Volts", text: "12.0 V from L1.a to L1.b, lamp on" });
	expect(words("reading", { ...reading, value: "open" }).text).toMatch(/^open from/);
	expect(words("bench", { part: "K1", good: false })).toEqual({
		sort: "Bench test",
		text: "K1 (lamp relay) is bad",
	});
	expect(words("codes", { codes: [], units: ["ECU"] }).text).toBe("none stored; answered: ECU");
	expect(words("reseated", { what: "X1" }).text).toBe("X1 (bulkhead plug) taken off and put back");
	expect(words("note", { text: "towed in" })).toEqual({ sort: "Note", text: "towed in" });
	expect(words("sign-off", { step: "recipe/01" })).toEqual({ sort: "Signed", text: "recipe/01" });
	expect(words("hold", { step: "recipe/01", text: "no part" }).text).toBe("recipe/01: no part");
	expect(words("lift", { hold: "e1", text: "came" })).toEqual({ sort: "Hold lifted", text: "came" });
	expect(words("repair", { kind: "open", where: "wire W1" })).toEqual({
		sort: "Repaired",
		text: "open: wire W1",
	});
	const finding = { rule: "idle-fuse", where: "F1 lamp fuse" };
	expect(words("acceptance", { finding, text: "trailer" })).toEqual({
		sort: "Finding accepted",
		text: "idle fuse, F1 lamp fuse: trailer",
	});
	expect(words("acceptance", { by: "the customer", text: "driven" }).text).toBe("driven");
	expect(words("tables", { files: [{ name: "wires.csv" }] }).text).toBe("wires.csv");
});

test("a kind this app does not know is shown by its name", () => {
	expect(words("tyre", {})).toEqual({ sort: "tyre", text: "" });
});
