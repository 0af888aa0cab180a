import { expect, test } from "vitest";
import { joint, makeLoom, wire } from "../recipe/bench.test-helper.js";
import { anchorOf, Places } from "./places.js";

/** A tree: trunk A - B - C, and D off B. */
const at = (id: string, place: string) => ({ ...joint(id), place });
const loom = makeLoom({
	joints: [at("JA", "a"), at("JB", "b"), at("JC", "c, wet"), at("JD", "d")],
	wires: [
		wire("W1", "JA", "JB", { metres: 1 }),
		wire("W2", "JB", "JC", { metres: 2 }),
		wire("W3", "JA", "JC", { metres: 3 }),
		wire("W4", "JB", "JD", { metres: 0.5 }),
	],
});
const places = new Places(loom, { parts: new Map(), contacts: new Map(), joints: new Map() }, [
	{ place: "c", zone: "cold", near: "", metres: undefined, celsius: 60 },
	{ place: "c, wet", zone: "wet", near: "", metres: undefined, celsius: undefined },
	{ place: "e", zone: "", near: "d", metres: 0.25, celsius: 125 },
]);

test("distance is the shortest way along the wires", () => {
	expect(places.metres("a", "c, wet")).toBe(3);
	expect(places.metres("d", "c, wet")).toBe(2.5);
	expect(places.metres("a", "a")).toBe(0);
	expect(places.metres("a", "nowhere")).toBeUndefined();
});

test("a place that no wire reaches is as far as its row says", () => {
	expect(places.metres("a", "e")).toBe(1.75);
});

test("the point of a wire nearest to a place, and how far that is, in a tree by hand", () => {
	// W3 passes B one metre from A; D lies half a metre off B.
	const along = places.along(loom.wires.get("W3")!, "d")!;
	expect([along.at, along.leg]).toEqual([1, 0.5]);
	expect(places.apart(along.spot, places.spot("b"))).toBe(1);
	expect(places.apart(along.spot, places.spot("d"))).toBe(0.5);
	expect(anchorOf(along.spot)).toBe("d");
});

test("the longest words that a place begins with give its zone", () => {
	expect([places.zone("c, dry"), places.zone("c, wet"), places.zone("a")]).toEqual(["cold", "wet", ""]);
	expect(places.zone("a, cold side")).toBe("cold");
});

test("the hotter of several places", () => {
	expect(places.celsius(["c, wet", "e"])).toBe(125);
	expect(places.celsius(["c, wet", "a"])).toBe(60);
	expect(places.celsius(["a"])).toBeUndefined();
});
