import { expect, test } from "vitest";
import { countTests, summaryLines } from "./summary.mjs";

/** The shape of the runner's JSON report, as vitest 4 writes it. */
const report = (passed: number, failed: number, files: object[] = []): string =>
	JSON.stringify({
		numPassedTests: passed,
		numFailedTests: failed,
		numPendingTests: 1,
		numTodoTests: 1,
		testResults: files,
	});

test("tests are counted from the report", () => {
	const failing = { status: "failed", assertionResults: [{ status: "failed" }] };
	expect(countTests(report(7, 2, [failing]))).toEqual({ passed: 7, failed: 2, skipped: 2 });
});

test("a file that did not load is a failure", () => {
	const unloaded = { status: "failed", assertionResults: [] };
	expect(countTests(report(7, 0, [unloaded]))).toMatchObject({ passed: 7, failed: 1 });
});

test("no report counts nothing", () => {
	expect(countTests("")).toEqual({ passed: 0, failed: 0, skipped: 0 });
});

const counts = { passed: 5, failed: 0, skipped: 0 };

test("the last line is plain", () => {
	const { lines, failed } = summaryLines([
		{ name: "types", ok: true, seconds: 1, counts: undefined },
		{ name: "tests", ok: true, seconds: 2, counts },
		{ name: "browser tests", ok: true, seconds: 2, counts: { ...counts, failed: 0 } },
	]);
	expect(lines.at(-1)).toBe("10 passed, 0 failed");
	expect(failed).toBe(0);
});

test("a failing check is one failure; failed tests are counted once", () => {
	const { lines } = summaryLines([
		{ name: "types", ok: false, seconds: 1, counts: undefined },
		{ name: "tests", ok: false, seconds: 2, counts: { ...counts, failed: 3 } },
	]);
	expect(lines.at(-1)).toBe("5 passed, 4 failed");
	expect(lines[0]).toMatch(/^FAILED {2}types/);
});

test("a runner that died without a failed test is a failure", () => {
	expect(summaryLines([{ name: "tests", ok: false, seconds: 2, counts }]).failed).toBe(1);
});
