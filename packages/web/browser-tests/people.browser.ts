/** People: the owner set up, an apprentice added, a switch by PIN, what may not be signed; and how it all looks. */
import type { Page } from "playwright-core";
import { afterEach, expect, test } from "vitest";
import { looksRight } from "./looks.test-helper.js";
import { SEARCH_MS, TABLET, testSite } from "./site.test-helper.js";

const site = testSite();
// A wrong PIN is answered by 401, which the browser itself reports as an error; no other errors are expected here.
afterEach(() => site.finish(/Failed to load resource: the server responded with a status of 401/));

async function toSteps(page: Page): Promise<void> {
	await page.getByRole("link", { name: "Changes", exact: true }).tap();
	await page.getByText("Steps in order").tap();
}

async function looked(page: Page): Promise<void> {
	await looksRight(page);
	await page.setViewportSize(TABLET.viewport);
}

test("with an owner everyone signs in with a PIN; who may not sign is told so; a switch takes one PIN", {
	timeout: SEARCH_MS,
}, async () => {
	const page = await site.open("");
	const enter = async (label: string, pin: string, action: string) => {
		await page.getByLabel(label).fill(pin.slice(0, -1));
		await page.getByRole("button", { name: pin.slice(-1), exact: true }).tap();
		await page.getByRole("button", { name: action, exact: true }).tap();
	};
	await page.getByRole("button", { name: "Set up the owner" }).tap();
	await page.getByLabel("Name of the owner").fill("Ola");
	await looked(page);
	await enter("PIN of the owner", "270385", "Set up");
	const people = page.getByRole("dialog", { name: "People" });
	await people.getByLabel("Name").fill("Lee");
	await people.getByRole("radio", { name: "Apprentice" }).tap();
	await enter("First PIN", "906142", "Add");
	await people.getByLabel("Lee, brakes").waitFor();
	await looked(page);
	await people.getByRole("button", { name: "Close" }).tap();

	await page.getByRole("button", { name: "Ola" }).tap();
	await page.getByRole("button", { name: "Lee", exact: true }).tap();
	await enter("PIN of Lee", "111119", "Sign in");
	await page.getByText("name and PIN do not go together").waitFor();
	await looked(page);
	await enter("PIN of Lee", "906142", "Sign in");
	await toSteps(page);
	await page.getByLabel("Search the changes").fill("clutch switch plug");
	await page.getByRole("button", { name: "Sign: fit the clutch switch plug" }).tap();
	await page
		.getByText(/Lee may not do steps of the sort start interlock yet/)
		.first()
		.waitFor();

	await page.getByRole("button", { name: "More: fit the clutch switch plug" }).tap();
	await page.getByRole("button", { name: "Hold: fit the clutch switch plug" }).tap();
	await page.getByLabel("Why must it wait?").fill("cavity cracked");
	await page.getByRole("dialog").getByRole("button", { name: "Hold" }).tap();
	await looked(page);

	// An apprentice puts a hold on; the owner lifts it.
	await page.getByRole("link", { name: /Loomwright/ }).tap();
	const questions = page.getByRole("region", { name: "Open questions" });
	await questions.getByText("cavity cracked").waitFor();
	expect(await questions.getByRole("button").count()).toBe(0);
	await page.getByRole("button", { name: /^Lee/ }).tap();
	await page.getByRole("button", { name: "Ola", exact: true }).tap();
	await enter("PIN of Ola", "270385", "Sign in");
	await questions.getByRole("button", { name: "Lift the hold" }).tap();
	await page.getByLabel("What has changed?").fill("new plug came");
	await page.getByRole("dialog").getByRole("button", { name: "Lift the hold" }).tap();
	await questions.waitFor({ state: "detached" });

	const stranger = await site.open("");
	await stranger.getByRole("heading", { name: "Who is at this tablet?" }).waitFor();
	expect(await stranger.getByRole("button", { name: "Ola" }).count()).toBe(1);
});
