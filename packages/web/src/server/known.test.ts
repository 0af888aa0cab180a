import { expect, test } from "vitest";
import { withWaiting } from "./known.js";
import type { ShopRepairs, Waiting, Writable } from "./types.js";

const body = { fault: "open:wire:W1", kind: "open", where: "wire W1", steps: [], worked: "" };
const by = { person: "Kim", time: "2030-01-01T00:00:00Z" };
const known: ShopRepairs = {
	cars: 2,
	work: [],
	repairs: [{ ...body, ...by, entry: "e1", job: "camper", takenBack: "" }],
};
const waits = (id: string, job: string, written: Writable, refused = ""): Waiting => ({
	...{ order: 1, job, refused, toDo: "" },
	entry: { ...written, ...by, id, account: "", device: "", counter: 1, seen: 0 },
});

test("what waits on this tablet counts already; what the server has is not counted twice", () => {
	const repair: Writable = { kind: "repair", body };
	expect(withWaiting(known, [waits("e1", "camper", repair)])).toEqual(known);
	const own = withWaiting(known, [waits("e2", "camper", repair), waits("e3", "van", repair)]);
	expect([own.cars, own.repairs.map(({ entry }) => entry)]).toEqual([3, ["e1", "e2", "e3"]]);
	expect(withWaiting(known, [waits("e2", "camper", repair, "refused")])).toEqual(known);
});

test("a waiting correction takes one out", () => {
	const back = waits("e9", "camper", { kind: "correction", body: { of: "e1", text: "another" } });
	expect(withWaiting(known, [back]).repairs[0]!.takenBack).toBe("e9");
});
