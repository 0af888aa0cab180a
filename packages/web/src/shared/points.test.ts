import { expect, test } from "vitest";
import { homesOf, type Point, searchPoints } from "./points.js";

const point = (id: string, home: string, text: string): Point => ({ id, home, text, colours: ["BN", "WH"] });
const points = [
	point("ECU.A12", "X-A", "X-A cavity 12, engine unit, coolant signal"),
	point("ECU.A1", "X-A", "X-A cavity 1, engine unit, supply"),
	point("K1.87", "K1", "main relay, 87"),
];

test("every word must be found, in any order, in name, words or colour", () => {
	const ids = (text: string, home = "") => searchPoints(points, text, home).map(({ id }) => id);
	expect(ids("coolant ENGINE")).toEqual(["ECU.A12"]);
	expect(ids("cavity bnwh")).toEqual(["ECU.A12", "ECU.A1"]);
	expect(ids("", "K1")).toEqual(["K1.87"]);
	expect(ids("relay supply")).toEqual([]);
});

test("homes are listed once", () => expect(homesOf(points)).toEqual(["X-A", "K1"]));
