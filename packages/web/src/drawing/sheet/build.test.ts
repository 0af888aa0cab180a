import { expect, test } from "vitest";
import { smallLoom } from "../small-car.test-helper.js";
import { buildSheet } from "./build.js";
import type { Sheet, SheetPart } from "./types.js";

const loom = smallLoom();
const sheetOf = (path: readonly string[], further = 0) => buildSheet(loom, path, further, () => "");
const ids = (items: readonly { readonly id: string }[]) => items.map(({ id }) => id).sort();
const part = (sheet: Sheet, id: string) => sheet.nodes.find((node) => node.id === id) as SheetPart;
const sides = (sheet: Sheet, id: string) =>
	Object.fromEntries(part(sheet, id).ports.map(({ name, side }) => [name, side]));

test("a wire brings its two ends; small parts are drawn whole, a unit with the pins concerned alone", () => {
	const sheet = sheetOf(["W12"]);
	expect(ids(sheet.nodes)).toEqual(["ECU", "X1/1"]);
	expect(part(sheet, "ECU").ports.map(({ name }) => name)).toEqual(["3"]);
	expect(ids(sheetOf(["W5"]).nodes)).toEqual(["K1", "S1"]);
	expect(part(sheetOf(["W5"]), "K1").ports).toHaveLength(4);
});

test("one wire further follows splices and small parts; wires between what is shown come along", () => {
	expect(ids(sheetOf(["W7"]).wires)).toEqual(["W7"]);
	expect(ids(sheetOf(["W7"], 1).wires)).toEqual(["W3", "W4", "W5", "W6", "W7", "W8"]);
	expect(sheetOf(["W7"]).more).toBe(true);
});

test("a part by itself is drawn with its own wires", () => {
	expect(ids(sheetOf(["F1"]).wires)).toEqual(["W1", "W2"]);
});

test("what the loom does not have is named, and the rest drawn", () => {
	const sheet = sheetOf(["W5", "nothing"]);
	expect(sheet.unknown).toEqual(["nothing"]);
	expect(sheet.wires).toHaveLength(1);
});

test("supply enters from above and leaves downwards to ground", () => {
	const sheet = sheetOf(["W1", "W2", "W3", "W7", "W8", "W9"]);
	expect(sides(sheet, "F1")).toEqual({ in: "north", out: "south" });
	expect(sides(sheet, "L1")).toEqual({ a: "north", b: "south" });
	expect(sides(sheet, "BAT")).toEqual({ "+": "south", "-": "south" });
	const upper = Object.fromEntries(sheet.wires.map(({ id, upper: { port, node } }) => [id, port || node]));
	expect(upper).toEqual({
		W1: "BAT.+",
		W2: "F1.out",
		W3: "SP1",
		W6: "K1.85",
		W7: "K1.87",
		W8: "L1.b",
		W9: "BAT.-",
	});
});

test("a sensor hangs below its unit, also through a connector", () => {
	const sheet = sheetOf(["W12", "W13", "W14"]);
	expect(sides(sheet, "ECU")).toEqual({ "3": "south", "4": "south" });
	expect(sides(sheet, "B1")).toEqual({ "1": "north", "2": "north" });
});

test("joints know their wires above and below, and how many are not drawn", () => {
	const splice = sheetOf(["W2", "W3"]).nodes.find(({ id }) => id === "SP1");
	expect(splice).toMatchObject({ above: ["W2"], below: ["W3"], undrawn: 3 });
});

test("a stowed end is drawn as such", () => {
	expect(sheetOf(["W15"]).nodes).toContainEqual({ what: "loose", id: "W15@to", insulated: true });
});
