/** What every screen must be: free of serious faults of accessibility, with targets a glove can hit, no wider than the screen. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { expect } from "vitest";
import { PHONE } from "./site.test-helper.js";

/** Smallest side of a control in px: what a gloved finger hits. */
const LEAST_PX = 44;

/** Controls on the screen that are smaller, with their size; a control within a label is hit by the label. */
const tooSmall = (page: Page) =>
	page.evaluate((least) => {
		const controls = document.querySelectorAll<HTMLElement>(
			"a, button, input, select, summary, [role=radio]",
		);
		return [...controls].flatMap((control) => {
			const hit = control.matches("input[type=checkbox], input[type=radio]")
				? (control.closest<HTMLElement>(".tall, .mantine-Checkbox-root, label") ?? control)
				: control;
			const { width, height } = hit.getBoundingClientRect();
			const hidden =
				width === 0 || getComputedStyle(control).visibility === "hidden" || control.closest("[inert]");
			const label = control.matches(".mantine-SegmentedControl-input");
			if (hidden || label || (width >= least && height >= least)) return [];
			return [
				`${control.tagName} "${(control.textContent || control.ariaLabel || "").slice(0, 40)}" ${width} x ${height}`,
			];
		});
	}, LEAST_PX - 0.5);

const GRAVE = new Set(["serious", "critical"]);

/** Looks at the page as it is: light, dark, and on a phone. Leaves it at the phone's size. */
export async function looksRight(page: Page): Promise<void> {
	for (const colorScheme of ["light", "dark"] as const) {
		await page.emulateMedia({ colorScheme });
		await page.locator(`[data-mantine-color-scheme="${colorScheme}"]`).waitFor();
		// Panels and dialogs fade in; a half-faded text has no contrast to judge.
		await page.waitForTimeout(400);
		const { violations } = await new AxeBuilder({ page }).analyze();
		const grave = violations.filter(({ impact }) => GRAVE.has(impact ?? ""));
		expect(grave.map(({ id, nodes }) => [id, nodes.map(({ html }) => html.slice(0, 160))])).toEqual([]);
	}
	expect(await tooSmall(page)).toEqual([]);
	await page.setViewportSize(PHONE);
	await page.waitForTimeout(400);
	expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
	expect(await tooSmall(page)).toEqual([]);
}
