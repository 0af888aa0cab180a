/** The server goes away while the app is open: it says so, computes on, and catches up when told to. */
import { afterEach, expect, test } from "vitest";
import { eventually, testSite } from "./site.test-helper.js";

const site = testSite();
// The browser itself reports every failed request as an error; no other errors are expected here.
afterEach(() => site.finish(/ERR_INTERNET_DISCONNECTED/));

test("without a server: plain words, and again when it is back", async () => {
	const page = await site.open("");
	await page.getByRole("heading", { level: 1, name: "The camper" }).waitFor();
	await page.route(/\/api\//, (route) => route.abort("internetdisconnected"));
	await page.reload();
	await page.getByRole("heading", { name: "The shop's server is away" }).waitFor();
	await page.unroute(/\/api\//);
	await page.getByRole("button", { name: "Try again" }).tap();
	await page.getByRole("heading", { level: 1, name: "The camper" }).waitFor();
});

test("a reading is still computed, and its entry is kept until it can be written", async () => {
	const page = await site.open("#//reading?from=BAT.%2B&to=BAT.-&what=volts&when=key-on");
	await page.locator(".answer-value").waitFor();
	await page.route(/\/api\//, (route) => route.abort("internetdisconnected"));
	await page.getByLabel("What the meter is set to").getByText("Voltage drop").tap();
	await eventually(() => page.locator(".answer-value").textContent()).toMatch(/^12/);
	await page.getByLabel("The meter shows").fill("12.3");
	await page.getByRole("button", { name: "Enter" }).tap();
	await page.getByText(/Not in the job's history yet/).waitFor();
	await page.unroute(/\/api\//);
	await page.getByRole("button", { name: "Write it again" }).tap();
	await page.getByText("Written into the job's history.").waitFor();
	const { entries } = await site.api<{ entries: unknown[] }>("entries");
	expect(entries).toHaveLength(1);
});
