import { openCar, parseEvidence, proveSheet, toEvidence } from "@loomwright/engine";
import { expect, test } from "vitest";
import { SMALL_CAR } from "../../drawing/small-car.test-helper.js";
import { evidenceOf } from "../find/acts.js";
import {
	type AllTaken,
	actsOfSheet,
	keyOf,
	nextUnread,
	preparation,
	rowsOf,
	ruledOut,
	stateOf,
	takenInHistory,
	tallyOf,
} from "./rows.js";

const sheet = proveSheet(openCar(SMALL_CAR));
const rows = rowsOf(sheet);
const sound: AllTaken = Object.fromEntries(rows.map((row) => [keyOf(row), { value: row.value ?? "open" }]));
const [first, second, third] = rows as [(typeof rows)[0], (typeof rows)[0], (typeof rows)[0]];

test("a sound car: every row right, every fault that the sheet catches ruled out", () => {
	expect(tallyOf(rows, sound)).toEqual({ unread: 0, right: rows.length, wrong: 0, "left out": 0 });
	expect(ruledOut(rows, sound)).toBe(sheet.coverage.caught);
	expect(nextUnread(rows, sound, 0)).toBeUndefined();
});

test("what is not read or not right rules out nothing", () => {
	const taken: AllTaken = {
		[keyOf(first)]: { value: first.value === undefined ? 1 : "open" },
		[keyOf(second)]: { leftOut: "cannot be reached" },
	};
	expect([first, second, third].map((row) => stateOf(row, taken))).toEqual(["wrong", "left out", "unread"]);
	expect(ruledOut(rows, taken)).toBe(0);
	expect(nextUnread(rows, taken, 0)).toBe(third);
	expect(nextUnread(rows, taken, rows.length)).toBe(third);
});

test("handed on to finding as the engine itself hands it on", () => {
	const taken = Object.fromEntries(Object.entries(sound).slice(0, 5));
	const entries = rows
		.filter((row) => taken[keyOf(row)])
		.map(({ number, value }) => ({ row: number, value: value ?? ("open" as const) }));
	const evidence = evidenceOf(actsOfSheet(sheet, taken), "converted", "Readings of the prove sheet", "off");
	expect(evidence).toEqual(toEvidence(sheet, entries));
	expect(parseEvidence(JSON.stringify(evidence), "e").occasions[0]!.readings.length).toBe(5);
});

test("the newest reading of a row in the history counts; other readings do not", () => {
	const entry = (body: object, kind = "reading") => ({ id: "", place: 1, time: "", person: "", kind, body });
	const of = (value: number) => entry({ ...first.question, value });
	const other = entry({ ...first.question, when: "rest", value: 3 });
	expect(takenInHistory(rows, [of(1), other, entry({ text: "x" }, "note"), of(2)])).toEqual({
		[keyOf(first)]: { value: 2 },
	});
});

test("what brings the car to a part: the first part's steps where they were not done", () => {
	const part = (when: string, ...prepare: string[]) => ({ when, title: "", prepare, cautions: [], rows: [] });
	const [bare, held, plugged] = [
		part("BAT=off; X1=unmated", "plug off"),
		part("BAT=off; X1=unmated; S1=on", "switch on"),
		part("BAT=off", "plug on"),
	];
	const three = { ...sheet, parts: [bare, held, plugged] };
	expect(preparation(three, held, bare.when)).toEqual(["switch on"]);
	expect(preparation(three, held, "")).toEqual(["plug off", "switch on"]);
	expect(preparation(three, held, plugged.when)).toEqual(["plug off", "switch on"]);
	expect(preparation(three, plugged, held.when)).toEqual(["plug on"]);
	expect(preparation(three, bare, plugged.when)).toEqual(["plug off"]);
});
