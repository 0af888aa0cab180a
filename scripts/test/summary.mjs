/**
 * @typedef {{ passed: number, failed: number, skipped: number }} Counts
 * @typedef {{ name: string, ok: boolean, seconds: number, counts: Counts | undefined }} Outcome
 */

/**
 * Counts the tests in the runner's JSON report. A file that did not load counts as one failed test.
 *
 * @param {string} report empty when the runner left none
 * @returns {Counts}
 */
export function countTests(report) {
	if (report === "") return { passed: 0, failed: 0, skipped: 0 };
	const { numPassedTests, numFailedTests, numPendingTests, numTodoTests, testResults } = JSON.parse(report);
	const unloaded = testResults.filter(
		(/** @type {{ status: string, assertionResults: { status: string }[] }} */ file) =>
			file.status === "failed" && !file.assertionResults.some(({ status }) => status === "failed"),
	).length;
	return {
		passed: numPassedTests,
		failed: numFailedTests + unloaded,
		skipped: numPendingTests + numTodoTests,
	};
}

/**
 * One line for each step and the closing line. A step that failed without a failed test to show for it counts
 * as one failure, so that the last line never says 0 failed when the run failed.
 *
 * @param {Outcome[]} outcomes
 * @returns {{ lines: string[], failed: number }}
 */
export function summaryLines(outcomes) {
	let passed = 0;
	let failed = 0;
	const lines = outcomes.map(({ name, ok, seconds, counts }) => {
		passed += counts?.passed ?? 0;
		failed += counts?.failed || (ok ? 0 : 1);
		const skipped = counts?.skipped ? `, ${counts.skipped} skipped` : "";
		const tests = counts ? `  ${counts.passed} passed, ${counts.failed} failed${skipped}` : "";
		return `${ok ? "ok    " : "FAILED"}  ${name.padEnd(16)}${seconds.toFixed(1).padStart(6)} s${tests}`;
	});
	return { lines: [...lines, `${passed} passed, ${failed} failed`], failed };
}
