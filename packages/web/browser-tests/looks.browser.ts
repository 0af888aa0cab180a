/** Every screen: no serious fault of accessibility in light and dark, targets a glove can hit, nothing wider than the screen. */
import type { Page } from "playwright-core";
import { afterEach, test } from "vitest";
import { looksRight } from "./looks.test-helper.js";
import { SEARCH_MS, TABLET, testSite } from "./site.test-helper.js";

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
		name: "proposal",
		hash: "#//plan?circuit=clutch-signal",
		ready: (page) => page.locator(".versus").waitFor({ timeout: SEARCH_MS }),
	},
	{
		name: "what is wanted",
		hash: "#//plan",
		ready: async (page) => {
			await page.getByText(/^What is wanted of the car/).tap();
			await page.getByRole("button", { name: "Want something more" }).tap();
			await page.getByRole("dialog").getByLabel("It must lead to").waitFor();
		},
	},
	{
		name: "sizes",
		hash: "#//size?chosen=N06",
		ready: (page) => page.locator(".discs").waitFor({ timeout: SEARCH_MS }),
	},
	{
		name: "what if",
		hash: "#//what-if?subject=wires%2FW422a&column=size&cell=0.35",
		ready: (page) => page.locator(".effects").waitFor({ timeout: SEARCH_MS }),
	},
	{
		name: "another car",
		hash: "#//transfer",
		ready: (page) => page.getByRole("button", { name: "A car from its table files" }).waitFor(),
	},
	{
		name: "versions",
		hash: "#//versions?version=1",
		ready: (page) => page.getByText("Save its tables").tap(),
	},
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

for (const { name, hash, ready } of SCREENS)
	test(
		name,
		async () => {
			const page = await site.open(hash, TABLET);
			await ready(page);
			await looksRight(page);
		},
		2 * SEARCH_MS,
	);
