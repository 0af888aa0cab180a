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

/** How many photos the browser's own database has. */
const photosKept = (page: Page) =>
	page.evaluate(
		() =>
			new Promise<number>((resolve) => {
				indexedDB.open("loomwright-tablet").onsuccess = ({ target }) => {
					const { result } = target as IDBOpenDBRequest;
					result.transaction("photos").objectStore("photos").count().onsuccess = (event) => {
						result.close();
						resolve((event.target as IDBRequest<number>).result);
					};
				};
			}),
	);

/** One grey pixel, by the PNG specification (ISO/IEC 15948). */
const PNG = Buffer.from(
	"89504e470d0a1a0a0000000d49484452000000010000000108000000003a7e9b550000000a49444154789c63f80f00010101005e1c2b0d0000000049454e44ae426082",
	"hex",
);

test("a photo taken away from the network waits too, and is in the history when it is back", async () => {
	const page = await tablet("Kim");
	await page.context().setOffline(true);
	await page.getByRole("button", { name: `More: ${STEP}` }).tap();
	const choosing = page.waitForEvent("filechooser");
	await page.getByRole("button", { name: `Photo: ${STEP}` }).tap();
	await (await choosing).setFiles({ name: "photo.png", mimeType: "image/png", buffer: PNG });
	await standing(page).getByText("photo: waits to be sent").waitFor();
	await page.reload();
	await page.getByRole("button", { name: "1 entry waits" }).waitFor();
	await page.context().setOffline(false);
	const photos = async () =>
		(await site.api<{ entries: { kind: string; body: { photo: string } }[] }>("entries")).entries.filter(
			({ kind }) => kind === "photo",
		);
	await eventually(async () => (await photos()).length).toBe(1);
	const [job] = ((await (await fetch(`${site.address}/api/v1/jobs`)).json()) as { jobs: { id: string }[] })
		.jobs;
	const [photo] = await photos();
	const back = await fetch(`${site.address}/api/v1/jobs/${job!.id}/photos/${photo!.body.photo}`);
	expect(Buffer.from(await back.arrayBuffer()).equals(PNG)).toBe(true);
	await page.getByRole("link", { name: /Loomwright/ }).tap();
	const shown = page.getByRole("img", { name: /^Photo recipe/ });
	await shown.waitFor();

	// Another tablet has it too, though it never showed it, and still has it without a network and after a reload.
	const other = await tablet("Lee");
	await eventually(() => photosKept(other)).toBe(1);
	await other.context().setOffline(true);
	await other.reload();
	const kept = other.getByRole("img", { name: /^Photo recipe/ });
	await other.getByRole("link", { name: /Loomwright/ }).tap();
	await kept.waitFor();
	expect(await kept.evaluate((image) => (image as HTMLImageElement).naturalWidth)).toBe(1);
});
