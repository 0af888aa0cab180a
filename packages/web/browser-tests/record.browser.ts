/** What stands on the record: entries taken back, findings accepted, guests who look; and how little is fetched for it. */
import type { Page } from "playwright-core";
import { afterEach, expect, test } from "vitest";
import { looksRight } from "./looks.test-helper.js";
import { SEARCH_MS, TABLET, testSite } from "./site.test-helper.js";

const site = testSite();
// The browser itself reports each request that was refused or did not get through; no other errors are expected.
afterEach(() => site.finish(/Failed to load resource|ERR_INTERNET_DISCONNECTED/));

async function looked(page: Page): Promise<void> {
	await looksRight(page);
	await page.setViewportSize(TABLET.viewport);
}

const dialog = (page: Page) => page.getByRole("dialog").last();

async function giveReason(page: Page, question: string, reason: string, action: string): Promise<void> {
	await page.getByLabel(question).fill(reason);
	await dialog(page).getByRole("button", { name: action }).tap();
}

/** Sends from the page itself, as whoever is signed in there. */
const send = (page: Page, method: string, path: string, body: object) =>
	page.evaluate(
		async ({ method, path, body }) => {
			const { csrf } = await (await fetch("/api/v1/session")).json();
			const headers = { "content-type": "application/json", "x-loomwright-csrf": csrf };
			const answer = await fetch(`/api/v1/${path}`, { method, headers, body: JSON.stringify(body) });
			if (!answer.ok) throw new Error(`${path}: ${answer.status} ${await answer.text()}`);
			return answer.json();
		},
		{ method, path, body },
	);

test("only what is new in the history is fetched, also after a reload; an entry taken back stays, marked", async () => {
	for (const text of ["one", "two"])
		await site.api("entries", { kind: "note", body: { text }, person: "Kim" });
	const page = await site.open("");
	const asked: string[] = [];
	page.on("request", (request) => {
		const after = /\/entries\?after=(\d+)$/.exec(request.url())?.[1];
		if (after !== undefined) asked.push(after);
	});
	await page.getByText("two", { exact: true }).waitFor();
	await page.reload();
	await page.getByText("two", { exact: true }).waitFor();
	asked.length = 0;
	await site.api("entries", { kind: "note", body: { text: "three" }, person: "Kim" });
	await page.getByText("three", { exact: true }).waitFor();
	expect(new Set(asked)).toEqual(new Set(["2"]));

	await page.getByLabel("Who is at this tablet?").fill("Lee");
	await page.getByRole("button", { name: "Whole history" }).tap();
	await page.getByRole("button", { name: "Take back: Note two" }).tap();
	await giveReason(page, "What is wrong with it?", "that was the other car", "Take back");
	const entry = page.getByRole("dialog").locator("[data-corrected]");
	await entry.getByText(/Lee, .*: that was the other car/).waitFor();
	expect(await entry.locator(".history-text").textContent()).toBe("two");
	await page.getByText("Note two. Why: that was the other car").first().waitFor();
	expect(await page.getByRole("button", { name: "Take back: Note two" }).count()).toBe(0);
	await looked(page);

	// A reading is taken back and the right one entered in one go; without a reason neither.
	const reading = { what: "volts", from: "ECU.B28", to: "BAT.-", when: "key-on", value: 21 };
	await site.api("entries", { kind: "reading", body: reading, person: "Kim" });
	await page.getByRole("button", { name: /^Take back: Volts 21/ }).tap();
	await page.getByLabel("The meter shows").fill("12,1");
	await page.getByRole("button", { name: "Enter", exact: true }).tap();
	await page.getByText("Say first what is wrong with it").waitFor();
	await looked(page);
	await page.getByLabel("What is wrong with it?").fill("digits swapped");
	await page.getByLabel("The meter shows").fill("12,1");
	await page.getByRole("button", { name: "Enter", exact: true }).tap();
	await page.getByRole("button", { name: /^Take back: Volts 12.1/ }).waitFor();
	const { entries } = await site.api<{ entries: { kind: string; body: object }[] }>("entries");
	expect(entries.map(({ kind }) => kind)).toEqual([
		...["note", "note", "note", "correction", "reading", "correction", "reading"],
	]);
	expect(entries.at(-1)!.body).toEqual({ ...reading, value: 12.1 });
});

test("where a proxy answered for the server, the tablet listens anew later on", async () => {
	const page = await site.open("");
	await page.clock.install();
	let refused = 0;
	await page.route("**/api/v1/live", (route) => {
		refused += 1;
		return refused > 1 ? route.continue() : route.fulfill({ status: 502 });
	});
	await page.reload();
	await page.getByText("three", { exact: true }).waitFor();
	await expect.poll(() => refused).toBe(1);
	await site.api("entries", { kind: "note", body: { text: "not heard at once" }, person: "Kim" });
	await page.clock.fastForward(20_000);
	await page.getByText("not heard at once", { exact: true }).waitFor();
	expect(refused).toBe(2);
});

test("a finding is accepted with a reason, also without a network; other values, and it no longer covers it", {
	timeout: SEARCH_MS,
}, async () => {
	const page = await site.open("");
	await send(page, "POST", "setup", { name: "Ola", pin: "270385" });
	const lee = await send(page, "POST", "people", { name: "Lee", role: "apprentice", pin: "906142" });
	const [job] = (await page.evaluate(async () => (await fetch("/api/v1/jobs")).json())).jobs;
	await page.goto(`${site.address}/#//checks`);
	await page.reload();
	const row = (name: RegExp) =>
		page.getByRole("navigation", { name: "Findings" }).getByRole("button", { name });
	await row(/^chafed supply/i).tap({ timeout: SEARCH_MS });
	await page.context().setOffline(true);
	await page.getByRole("button", { name: "Accept this finding" }).tap();
	await giveReason(page, "Why may it stay as it is?", "sleeved along its whole way", "Accept it as it is");
	await page.getByText("Accepted by Ola: waits to be sent.").waitFor();
	await page.context().setOffline(false);
	const acceptance = page.getByRole("region", { name: "Acceptance" });
	await acceptance.getByText("Accepted by Ola, owner").waitFor();
	await row(/^chafed supply.*note, accepted/i).waitFor();
	await page.getByText("1 accepted", { exact: true }).waitFor();
	await looked(page);

	const { tables } = (await page.evaluate(
		async (id) => (await fetch(`/api/v1/jobs/${id}`)).json(),
		job.id,
	)) as { tables: Record<string, string> };
	const wires = tables["wires.csv"]!;
	const thicker = wires.replace(/^(W418,.*?,)0\.5,/m, "$10.75,");
	expect(thicker).not.toBe(wires);
	await send(page, "PUT", `jobs/${job.id}/tables`, { tables: { "wires.csv": thicker } });
	await page.reload();
	await acceptance.getByText(/no longer covers it/).waitFor({ timeout: SEARCH_MS });
	await acceptance.getByText(/^new: W418: .*0\.75 mm2/).waitFor();
	expect(await row(/accepted/).count()).toBe(0);
	await looked(page);
	await acceptance.getByRole("button", { name: "Take back the acceptance by Ola" }).tap();
	await giveReason(page, "Why is it taken back?", "new wire", "Take the acceptance back");
	await acceptance.getByText("sleeved").waitFor({ state: "detached" });

	await send(page, "POST", "session", { person: lee.id, pin: "906142" });
	await page.reload();
	await acceptance.getByText("A technician or the owner can accept it.").waitFor({ timeout: SEARCH_MS });
	expect(await acceptance.getByRole("button").count()).toBe(0);
});

test("a guest's link: made and copied, opens one job for looking, and ends", {
	timeout: SEARCH_MS,
}, async () => {
	const page = await site.open("");
	await page.getByRole("button", { name: "Ola" }).tap();
	await page.getByLabel("PIN of Ola").fill("270385");
	await page.getByRole("button", { name: "Sign in", exact: true }).tap();
	await page.getByRole("button", { name: "Links for guests" }).tap();
	await page.getByLabel("Whom is it for?").fill("the customer");
	await page.getByRole("button", { name: "Make a link" }).tap();
	const link = await page.getByLabel("Link", { exact: true }).inputValue();
	expect(link).toMatch(/^http:\/\/127\.0\.0\.1:\d+\/#\/[^/]+\/start\?guest=[\w-]{43}$/);
	await looked(page);

	const guest = await site.open(new URL(link).hash);
	await guest.getByRole("heading", { level: 1, name: "The camper" }).waitFor();
	expect(guest.url()).not.toContain("guest=");
	await guest.getByRole("button", { name: "Whole history" }).tap();
	expect(
		await dialog(guest)
			.getByRole("button", { name: /Take back/ })
			.count(),
	).toBe(0);
	await dialog(guest).getByRole("button", { name: "Close" }).tap();
	await guest.getByRole("link", { name: "Find", exact: true }).tap();
	await guest.getByText("This page is for the shop's own work.").waitFor();
	await expect(send(guest, "POST", "jobs/x/entries", {})).rejects.toThrow(/403/);

	await guest.getByRole("link", { name: /Loomwright/ }).tap();
	await guest.getByRole("button", { name: "Whole history" }).waitFor();

	await page.getByRole("button", { name: "End the link for the customer" }).tap();
	await page.getByText("the customer ended").waitFor();
	// The guest's page asks now and then, and when it hears of an entry.
	const [job] = (await page.evaluate(async () => (await fetch("/api/v1/jobs")).json())).jobs;
	await send(page, "POST", `jobs/${job.id}/entries`, { kind: "note", body: { text: "handed over" } });
	await guest.getByText("This link has ended.").waitFor({ timeout: 45_000 });
	expect(await guest.getByRole("heading", { level: 1 }).count()).toBe(0);
});
