/** A fault found and mended is entered without a network, counts at once, is sent later, and is taken out again. */
import { afterEach, expect, test } from "vitest";
import { looksRight } from "./looks.test-helper.js";
import { eventually, SEARCH_MS, TABLET, testSite } from "./site.test-helper.js";

const site = testSite();
afterEach(() => site.finish(/Failed to load resource|ERR_INTERNET_DISCONNECTED/));

interface Repairs {
	readonly cars: number;
	readonly repairs: readonly { readonly kind: string; readonly worked: string; readonly takenBack: string }[];
}
interface Ranked {
	readonly where: string;
	readonly singles: readonly { readonly steps: readonly string[] }[];
}
const repairs = async () => (await (await fetch(`${site.address}/api/v1/repairs`)).json()) as Repairs;

test(
	"this was it",
	async () => {
		const page = await site.open("#//find");
		await page.getByRole("button", { name: "Trouble codes" }).tap();
		const dialog = page.getByRole("dialog");
		await dialog.getByLabel("Search").fill("coolant high");
		await dialog.getByLabel(/P0118/).check();
		await dialog.getByRole("button", { name: "Enter 1 code" }).tap();
		await page.getByText("Up to date with what was seen.").waitFor({ timeout: SEARCH_MS });
		const counts = page.getByRole("region", { name: "This shop's own repairs" });
		await counts.getByText(/None is entered yet/).waitFor();

		// The first that the recipe worked on: it may be somebody's work.
		const { faults } = await site.api<{ faults: Ranked[] }>("find", { occasions: [{ codes: ["P0118"] }] });
		const { where } = faults.find(({ singles }) => singles[0]!.steps.length > 0)!;
		const ranked = page.locator(".ranking > li", { hasText: where }).first();
		const chance = () => ranked.locator(".ranking-number").textContent();
		await ranked.getByRole("button").first().tap();
		await page.context().setOffline(true);
		await page.getByRole("button", { name: "This was it, and it is mended" }).tap();
		const before = await chance();
		const form = page.getByRole("dialog", { name: "Found and mended" });
		await form.getByLabel(/Who had done that/).fill("Kim");
		await form.getByRole("button", { name: "Enter the repair" }).tap();
		await counts.getByText("Counted into the chances above: 1 repair on 1 car.").waitFor();
		await expect.poll(chance, { timeout: SEARCH_MS }).not.toBe(before);
		expect((await repairs()).repairs).toEqual([]);

		await page.context().setOffline(false);
		await eventually(async () => (await repairs()).repairs.map(({ worked }) => worked)).toEqual(["Kim"]);
		await counts.getByRole("button", { name: "Show the counts" }).tap();
		const [{ kind } = { kind: "" }] = (await repairs()).repairs;
		const row = counts.locator(".predicted > li", { hasText: `${kind}where hands were` }).first();
		await eventually(() => row.textContent()).toMatch(
			/found1expected on 1 car0\.\d+chance of each, before1 in .*after/,
		);
		await counts.getByText(/Kim 1, expected/).waitFor();
		await looksRight(page);
		await page.setViewportSize(TABLET.viewport);

		await counts.getByRole("button", { name: /^Take out/ }).tap();
		const why = page.getByRole("dialog", { name: /^Take out/ });
		await why.getByLabel("Why it was not that").fill("the plug was only loose");
		await why.getByRole("button", { name: "Take out" }).tap();
		await counts
			.getByText(/None is entered yet|0 repairs/)
			.first()
			.waitFor();
		await eventually(async () => (await repairs()).cars).toBe(0);
		expect((await repairs()).repairs[0]!.takenBack).not.toBe("");
		await eventually(chance).toBe(before);
	},
	3 * SEARCH_MS,
);
