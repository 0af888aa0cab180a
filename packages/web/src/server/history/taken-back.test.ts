import { expect, test } from "vitest";
import type { Entry } from "../types.js";
import { standing, takenBack } from "./taken-back.js";

/** Entries 1, 2, ...: a number is a correction of that one, 0 a note. */
const history = (...of: number[]): Entry[] =>
	of.map((target, k) => ({
		...{ id: String(k + 1), place: k + 1, time: "", stored: "", person: "Kim", account: "" },
		...{ previous: "", hash: "", kind: target === 0 ? "note" : "correction", body: { of: String(target) } },
	}));

const back = (...of: number[]) =>
	[...takenBack(history(...of))].map(([id, by]) => [id, by.id]).sort((a, b) => (a[0]! < b[0]! ? -1 : 1));
const stand = (...of: number[]) => standing({ entries: history(...of), fault: null }).map(({ id }) => id);

test("a correction takes an entry back; taken back itself it does not; both are told", () => {
	expect(back(0, 0, 1)).toEqual([["1", "3"]]);
	expect(stand(0, 0, 1)).toEqual(["2"]);
	expect(back(0, 0, 1, 3)).toEqual([["3", "4"]]);
	expect(stand(0, 0, 1, 3)).toEqual(["1", "2"]);
	// Taken back twice, one of them taken back: the other still holds.
	expect(back(0, 1, 1, 2)).toEqual([
		["1", "3"],
		["2", "4"],
	]);
	expect(stand()).toEqual([]);
});
