/** Proving and power-up over the server, and what it keeps of them. */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { JOB, smallServer } from "./server.test-helper.js";

test("the sheet, what was read on it, and where that leads", async () => {
	const { ask, data } = await smallServer();
	const { status, body: sheet } = await ask("POST", `${JOB}/prove`, {});
	expect([status, sheet.readings, sheet.judged, sheet.found]).toEqual([200, sheet.lowerBound, [], null]);
	const kept = join(data, "computed");
	expect(readdirSync(kept)).toHaveLength(1);
	const rows = sheet.parts.flatMap((part: { rows: unknown[] }) => part.rows);
	const number = rows.find((row: { value: number | null }) => row.value !== null);
	const entries = [{ row: number.number, value: "open" }];
	const judged = (await ask("POST", `${JOB}/prove`, { entries })).body;
	expect(readdirSync(kept)).toHaveLength(1);
	expect(judged.parts).toEqual(sheet.parts);
	expect(judged.judged[0].passes).toBe(false);
	expect(judged.found.faults.length).toBeGreaterThan(0);
	const right = await ask("POST", `${JOB}/prove`, {
		entries: [...entries, { row: number.number, value: number.value }],
	});
	expect([right.status, right.body.judged.length, right.body.found]).toEqual([200, 2, null]);
	const none = await ask("POST", `${JOB}/prove`, { entries: [{ row: 999, value: 1 }] });
	expect([none.status, none.body.error]).toEqual([422, "the sheet has no row 999"]);
	expect((await ask("POST", `${JOB}/prove`, { leastOhms: 0 })).status).toBe(400);
});

test("the stages of the power-up", async () => {
	const { ask } = await smallServer();
	const { status, body } = await ask("GET", `${JOB}/power`);
	expect([status, body.of, body.stages[0].kind]).toEqual([200, "converted", "before power"]);
});
