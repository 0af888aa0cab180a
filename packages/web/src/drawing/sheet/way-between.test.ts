import { expect, test } from "vitest";
import { smallLoom } from "../small-car.test-helper.js";
import { wayBetween } from "./way-between.js";

const loom = smallLoom();

test("goes over wires, splices, fuses and relay contacts", () => {
	expect(wayBetween(loom, "BAT.+", "L1.a")).toEqual(
		"BAT.+ W1 F1.in F1.out W2 SP1 W3 K1.30 K1.87 W7 L1.a".split(" "),
	);
});

test("goes through both halves of a connector", () => {
	expect(wayBetween(loom, "ECU.3", "B1.1")).toEqual("ECU.3 W12 X1.1a X1.1b W13 B1.1".split(" "));
});

test("takes a ground point rather than a load", () => {
	expect(wayBetween(loom, "L1.b", "K1.85")).toEqual(["L1.b", "W8", "G1", "W6", "K1.85"]);
});

test("goes through a unit where there is no other way", () => {
	expect(wayBetween(loom, "ECU.3", "G1").slice(0, 4)).toEqual(["ECU.3", "ECU.2", "W11", "G1"]);
});

test("a part's own side of a contact is the same place; unknown names are left out", () => {
	expect(wayBetween(loom, "S1.2!pin", "K1.86")).toEqual(["S1.2", "W5", "K1.86"]);
	expect(wayBetween(loom, "body", "K1.86")).toEqual(["K1.86", "W5"]);
});

test("the wires at the two ends come along: they show what is measured there", () => {
	expect(wayBetween(loom, "ECU.3", "G1").slice(4)).toEqual(["W12"]);
});
