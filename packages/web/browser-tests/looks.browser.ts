/** Every screen: no serious fault of accessibility in light and dark, targets a glove can hit, nothing wider than the screen. */
import { AxeBuilder } from "@axe-core/playwright";
import type { Page } from "playwright-core";
import { afterEach, expect, test } from "vitest";
import { PHONE, SEARCH_MS, TABLET, testSite } from "./site.test-helper.js";

const site = testSite();
afterEach(() => site.finish());

interface Screen {
	readonly name: string;
	readonly hash: string;
	readonly ready: (page: Page) => Promise<unknown>;
}

const drawing = (page: Page) =>
	page
		.getByRole("img", { name: /^Circuit drawing/ })
		.first()
		.waitFor();

const SCREENS: readonly Screen[] = [
	{ name: "start", hash: "", ready: (page) => page.getByText(/findings?, /).waitFor({ timeout: SEARCH_MS }) },
	{
		name: "changes by connector",
		hash: "#//changes?connector=X-ECUB",
		ready: async (page) => {
			await page.getByRole("button", { name: "Drawing" }).first().tap();
			await drawing(page);
		},
	},
	{ name: "steps", hash: "#//changes?view=steps", ready: (page) => page.locator(".step").first().waitFor() },
	{
		name: "checks",
		hash: "#//checks?finding=1",
		ready: async (page) => {
			await page.locator(".finding").waitFor({ timeout: SEARCH_MS });
			await drawing(page);
		},
	},
	{
		name: "reading",
		hash: "#//reading?from=ECU.B28&to=BAT.-&what=volts&when=key-on",
		ready: async (page) => {
			await page.locator(".answer-value").waitFor();
			await drawing(page);
			await page.getByText(/in this drawing/).tap();
			await page.locator(".fold .row").first().tap();
			await page.getByText("Volts at from").waitFor();
		},
	},
	{
		name: "point picker",
		hash: "#//reading",
		ready: async (page) => {
			await page.getByRole("button", { name: "Lead 1, red" }).tap();
			await page.getByRole("dialog").locator(".row").first().waitFor();
		},
	},
	{
		name: "find",
		hash: "#//find",
		ready: async (page) => {
			await page.getByRole("button", { name: "Practice cases" }).tap();
			await page.getByRole("dialog").locator(".row").first().tap();
			const next = page.getByRole("button", { name: "Show the next" });
			while (await next.isEnabled()) await next.tap();
			await page.getByText("Up to date with what was seen.").waitFor({ timeout: SEARCH_MS });
			await page.locator(".ranking-row").first().tap();
			await page.getByText("Why it stands here").waitFor();
		},
	},
	{
		name: "trouble codes",
		hash: "#//find",
		ready: async (page) => {
			await page.getByRole("button", { name: "Trouble codes" }).tap();
			await page.getByRole("dialog").getByLabel(/P0118/).waitFor();
		},
	},
];

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

for (const { name, hash, ready } of SCREENS)
	test(
		name,
		async () => {
			const page = await site.open(hash, TABLET);
			await ready(page);
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
			expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(
				PHONE.width,
			);
			expect(await tooSmall(page)).toEqual([]);
		},
		2 * SEARCH_MS,
	);
