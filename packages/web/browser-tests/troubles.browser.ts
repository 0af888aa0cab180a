/** What the app says when something is wrong: no server, bad tables, a question that must not be answered. */
import type { Page, Route } from "playwright-core";
import { afterEach, expect, test } from "vitest";
import { testSite } from "./site.test-helper.js";

const site = testSite();
afterEach(() => site.finish());

/** Opens the app anew with some of the server's answers replaced. */
async function withAnswers(url: RegExp, answer: (route: Route) => Promise<void>): Promise<Page> {
	const page = await site.open("#//changes");
	await page.getByRole("navigation", { name: "Connectors" }).waitFor();
	await page.route(url, answer);
	await page.reload();
	return page;
}

const job = /\/api\/v1\/jobs\/[^/]+$/;

test("bad tables are told by file, row and column, all at once", async () => {
	const page = await withAnswers(job, async (route) => {
		const response = await route.fetch();
		const body = (await response.json()) as { tables: Record<string, string> };
		const rows = body.tables["wires.csv"]!.split("\n");
		const size = rows[0]!.split(",").indexOf("size");
		const spoil = (row: number) => {
			const cells = rows[row]!.split(",");
			cells[size] = "thick";
			rows[row] = cells.join(",");
		};
		spoil(1);
		spoil(2);
		body.tables["wires.csv"] = rows.join("\n");
		await route.fulfill({ response, json: body });
	});
	const alert = page.getByRole("alert");
	await alert.getByText("2 places in the tables must be mended first:").waitFor();
	const cells = await alert.locator("tbody tr").first().locator("td").allTextContents();
	expect(cells.slice(0, 3)).toEqual(["wires.csv", "2", "size"]);
	expect(cells[3]).toContain("thick");
});

test("steps that do not fit the car stand before all else", async () => {
	const page = await withAnswers(job, async (route) => {
		const response = await route.fetch();
		const body = (await response.json()) as { tables: Record<string, string> };
		body.tables["recipe.csv"] = body.tables["recipe.csv"]!.replace(",W170b,W171,", ",W170b,W999,");
		await route.fulfill({ response, json: body });
	});
	await page.getByRole("heading", { name: "1 step of the recipe does not fit this car" }).waitFor();
	await page.getByText(/Step 21, join/).waitFor();
	await page.getByText("Steps in order").tap();
	await page.locator(".step[data-misfit]", { hasText: "does not fit this car" }).waitFor();
	await page.getByRole("link", { name: "Checks" }).tap();
	await page.getByText(/1 step of the recipe could not be applied/).waitFor();
});

test("a circuit that must not be measured is refused in plain words", async () => {
	const page = await site.open("#//reading?from=RCU.3&to=BAT.-&what=volts&when=key-on");
	await page.getByRole("heading", { name: "No reading here" }).waitFor();
	await page.getByText(/restraint circuit \(pyrotechnic\): never measured here/).waitFor();
	expect(await page.locator(".answer-value").count()).toBe(0);
});

test("ohms on a live circuit are refused, with the condition to use", async () => {
	const page = await site.open("#//reading?from=BAT.%2B&to=BAT.-&what=ohms&when=key-on");
	await page.getByText(/ohms are read with the battery off/i).waitFor();
	await page
		.getByText(/battery-off/)
		.first()
		.waitFor();
});

test("an address without a job that is there: said at once, with the jobs there are", async () => {
	const page = await site.open("#/checks");
	await page.getByRole("heading", { level: 1, name: 'There is no job "checks"' }).waitFor();
	await page.getByRole("link", { name: /^The camper/ }).tap();
	await page.getByRole("heading", { level: 1, name: "The camper" }).waitFor();
});
