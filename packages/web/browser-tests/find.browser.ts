/** Finding faults step by step: the practice cases, and a case of the shop's own that goes into the history. */
import type { Page } from "playwright-core";
import { afterEach, expect, test } from "vitest";
import { eventually, SEARCH_MS, testSite } from "./site.test-helper.js";

const site = testSite();
afterEach(() => site.finish());

interface Ranked {
	readonly where: string;
}

/** Waits until the ranking is of what was seen last. */
async function settled(page: Page): Promise<void> {
	await page.getByText("Up to date with what was seen.").waitFor({ timeout: SEARCH_MS });
}

const top = (page: Page) => page.locator(".ranking-row strong").first();

test(
	"each practice case, shown one thing at a time, ends at the server's own ranking",
	async () => {
		const { practice } = await site.api<{ practice: { title: string; text: string }[] }>("practice");
		expect(practice.length).toBeGreaterThanOrEqual(8);
		const page = await site.open("#//find");
		for (const { title, text } of practice) {
			const { faults } = await site.api<{ faults: Ranked[] }>("find", JSON.parse(text));
			await page.getByRole("button", { name: "Practice cases" }).tap();
			await page.getByRole("dialog").getByRole("button", { name: title }).tap();
			await page.getByRole("heading", { name: title }).waitFor();
			const next = page.getByRole("button", { name: "Show the next" });
			const before = await page.locator(".acts > li").count();
			let shown = before;
			while (await next.isEnabled()) {
				await next.tap();
				shown += 1;
				await eventually(() => page.locator(".acts > li").count()).toBe(shown);
			}
			expect(shown).toBeGreaterThan(before);
			await settled(page);
			expect(await top(page).textContent()).toBe(faults[0]!.where);
		}
		const { entries } = await site.api<{ entries: unknown[] }>("entries");
		expect(entries).toEqual([]);
	},
	6 * SEARCH_MS,
);

test(
	"codes and a reading lead on; what is entered goes into the history, and so does taking it back",
	async () => {
		const page = await site.open("#//find");
		await page.getByRole("button", { name: "Trouble codes" }).tap();
		const dialog = page.getByRole("dialog");
		await dialog.getByLabel("Search").fill("coolant high");
		await dialog.getByLabel(/P0118/).check();
		await dialog.getByRole("button", { name: "Enter 1 code" }).tap();
		await settled(page);

		const card = page.getByRole("region", { name: "Next reading" });
		await card
			.getByText(/\d+ min/)
			.first()
			.waitFor();
		expect(await card.locator(".outcomes > li").count()).toBeGreaterThan(0);
		const heading = () => card.getByRole("heading").first().textContent();
		const proposed = await heading();
		await card.getByRole("button", { name: "Propose another reading" }).tap();
		await expect.poll(heading, { timeout: SEARCH_MS }).not.toBe(proposed);
		await settled(page);
		const first = await heading();
		await card.getByRole("button", { name: "Show where the leads go" }).tap();
		await card.locator('[data-lead="1"]').waitFor();
		await card.getByLabel("The meter shows").fill("5.01");
		await card.getByRole("button", { name: "Enter" }).tap();
		await expect
			.poll(() => card.getByRole("heading").first().textContent(), { timeout: SEARCH_MS })
			.not.toBe(first);
		await settled(page);

		await page.locator(".ranking-row").first().tap();
		await page.getByText("Why it stands here").waitFor();
		expect(await page.locator(".grounds > li").count()).toBeGreaterThan(0);
		await page
			.getByRole("heading", { name: "What it predicts where you have read" })
			.waitFor({ timeout: SEARCH_MS });
		// The reading entered above, with what this fault and a sound car would show.
		await page.locator(".predicted > li", { hasText: "5.01 V" }).first().waitFor();
		const last = page.locator(".row", { has: page.getByRole("button", { name: "Take it next" }) }).last();
		const other = (await last.locator("strong").textContent())!;
		await last.getByRole("button").tap();
		await eventually(heading).toContain(other);
		await page.getByRole("button", { name: "Show it in the drawing" }).tap();
		await page
			.locator(".fault-detail")
			.getByRole("img", { name: /^Circuit drawing/ })
			.waitFor();

		await page.getByRole("button", { name: "Take the last back" }).tap();
		await eventually(() => page.locator(".acts > li").count()).toBe(1);
		const kinds = async () =>
			(await site.api<{ entries: { kind: string }[] }>("entries")).entries.map(({ kind }) => kind);
		await eventually(kinds).toEqual(["codes", "reading", "note"]);
	},
	3 * SEARCH_MS,
);

test("functions, bench tests and reseated connectors can be added", async () => {
	const page = await site.open("#//find");
	const add = async (form: string, button: string, search = "") => {
		await page.getByRole("button", { name: form }).tap();
		const dialog = page.getByRole("dialog");
		if (search !== "") await dialog.getByLabel("Search").fill(search);
		await dialog.getByRole("button", { name: button, exact: true }).tap();
		await dialog.waitFor({ state: "hidden" });
	};
	await add("Works or not", "the starter turns the engine: works");
	await add("A bench test", "K1 is good", "K1");
	await add("Reseated", "X-ECUB was reseated", "X-ECUB");
	const acts = page.locator(".acts > li");
	await eventually(() => acts.count()).toBe(3);
	expect(await acts.last().textContent()).toContain("X-ECUB");
	await page.reload();
	await eventually(() => acts.count()).toBe(3);
});

test(
	"an entry that fits nothing is named, and taken once more on the spot",
	async () => {
		const page = await site.open("#//find");
		await page.getByRole("button", { name: "A reading", exact: true }).tap();
		const dialog = page.getByRole("dialog", { name: "A reading that was taken" });
		for (const [lead, point] of [
			["Lead 1, red", "BAT.+"],
			["Lead 2, black", "BAT.-"],
		] as const) {
			await dialog.getByRole("button", { name: lead }).tap();
			const picker = page.getByRole("dialog", { name: lead });
			await picker.getByLabel("Search").fill(point);
			await picker.locator(".row", { hasText: point }).first().tap();
			await picker.waitFor({ state: "hidden" });
		}
		await dialog.getByLabel("How the car stood").selectOption("key-on");
		await dialog.getByLabel("The meter shows").fill("3");
		await dialog.getByRole("button", { name: "Enter" }).tap();
		await settled(page);
		await page
			.getByRole("region", { name: "What does not fit" })
			.getByText(/3 V: does not fit/)
			.waitFor();
		const region = page.getByRole("region", { name: "Reading to take once more" });
		await region.getByLabel("The meter shows").fill("12.6");
		await region.getByRole("button", { name: "Enter" }).tap();
		await eventually(() => page.locator(".acts > li").count()).toBe(3);
		expect(await page.locator(".acts > li").allTextContents()).toEqual([
			expect.stringContaining("3.00 V"),
			expect.stringContaining("read once more"),
			expect.stringContaining("12.6 V"),
		]);
	},
	2 * SEARCH_MS,
);
