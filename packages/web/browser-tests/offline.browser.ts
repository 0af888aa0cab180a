/** Without a network: the app opens, takes entries, keeps them over a reload, and merges when the network is back. */
import type { Page } from "playwright-core";
import { afterEach, expect, test } from "vitest";
import { eventually, TABLET, testSite } from "./site.test-helper.js";

const site = testSite();
// The browser itself reports every failed request as an error; no other errors are expected here.
afterEach(() => site.finish(/ERR_INTERNET_DISCONNECTED|Failed to load resource/));

const STEP = "take out the gearbox control unit, battery off";

/** A tablet of its own that has the app and the data on it, at the steps of the recipe. */
async function tablet(name: string): Promise<Page> {
	const page = await site.open("", { ...TABLET, serviceWorkers: "allow" });
	await page.getByLabel("Who is at this tablet?").fill(name);
	await page.evaluate(() => navigator.serviceWorker.ready);
	// From here on the service worker stands between page and network.
	await page.reload();
	await page.getByRole("heading", { level: 1, name: "The camper" }).waitFor();
	await toSteps(page);
	await done(page).waitFor();
	return page;
}

async function toSteps(page: Page): Promise<void> {
	await page.getByRole("link", { name: "Changes", exact: true }).tap();
	await page.getByText("Steps in order").tap();
}

const done = (page: Page) => page.getByRole("button", { name: `Done: ${STEP}` });
const standing = (page: Page) => page.locator(".step", { hasText: STEP }).getByRole("status");

test("two tablets away enter the same step: kept over a reload, both in the history, and the clash shows", async () => {
	const [kim, lee] = [await tablet("Kim"), await tablet("Lee")];
	for (const page of [kim, lee]) {
		await page.context().setOffline(true);
		await done(page).tap();
		await standing(page).getByText("waits to be sent").waitFor();
	}
	await kim.reload();
	await kim.getByRole("button", { name: "1 entry waits" }).waitFor();
	await toSteps(kim);
	await standing(kim).getByText("waits to be sent").waitFor();
	const { entries: before } = await site.api<{ entries: unknown[] }>("entries");
	expect(before).toEqual([]);

	for (const page of [kim, lee]) await page.context().setOffline(false);
	const people = async () =>
		(await site.api<{ entries: { kind: string; person: string }[] }>("entries")).entries
			.map(({ kind, person }) => `${kind} by ${person}`)
			.sort();
	await eventually(people).toEqual(["step by Kim", "step by Lee"]);
	for (const page of [kim, lee]) {
		await standing(page)
			.getByText(/^(Kim and Lee|Lee and Kim) entered this apart$/)
			.waitFor();
		await eventually(() => page.getByText("waits to be sent").count()).toBe(0);
	}

	// Whoever then looks and signs settles it, and the other tablet hears of it.
	await kim.getByRole("button", { name: `Sign: ${STEP}` }).tap();
	await standing(lee).getByText("signed by Kim").waitFor();
	await eventually(() => lee.getByText("entered this apart").count()).toBe(0);
});
