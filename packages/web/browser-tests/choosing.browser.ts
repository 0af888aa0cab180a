/** Choosing what is done, as the owner does it: the proposal, sizes, what-if, another car, tables brought in, versions. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import type { Page } from "playwright-core";
import { afterEach, expect, test } from "vitest";
import { eventually, SEARCH_MS, testSite } from "./site.test-helper.js";

const site = testSite();
// What is refused with 422 the browser itself reports as an error.
afterEach(() => site.finish(/status of 422/));

const DEMO = resolve(import.meta.dirname, "../../../demo");

interface Plan {
	readonly minutes: number;
	readonly choices: readonly {
		readonly circuit: string;
		readonly title: string;
		readonly text: string;
		readonly second: { readonly text: string } | null;
	}[];
}

const tab = (page: Page, name: string) =>
	page.getByRole("navigation", { name: "Choosing" }).getByRole("link", { name }).tap();

test(
	"the proposal: each circuit with what else it could be, the whole beside its rivals",
	async () => {
		const page = await site.open("");
		await page
			.getByRole("navigation", { name: "The line of work" })
			.getByRole("link", { name: "Choose" })
			.tap();
		const rows = page.getByRole("navigation", { name: "Circuits" }).getByRole("button");
		await rows.first().waitFor({ timeout: SEARCH_MS });
		const plan = await site.api<Plan>("plan", {});
		expect(await rows.count()).toBe(plan.choices.length);
		const whole = page.getByRole("region", { name: "The whole" });
		await whole.getByText("Proved: no other choice of those offered costs less.").waitFor();
		for (const name of ["Work on the loom", "A second loom laid over it", "A new loom in its place"])
			await whole.getByText(name).waitFor();
		const ground = plan.choices.find(({ circuit }) => circuit === "clutch-ground")!;
		await rows.filter({ hasText: new RegExp(ground.title, "i") }).tap();
		const versus = page.locator(".versus");
		await versus.getByText(ground.text).waitFor();
		await versus.getByText(ground.second!.text).waitFor();
		// The closest call of the demo car; demo/main/targets.csv.
		await page.getByLabel(/^Closest calls first/).check();
		await eventually(() => rows.first().textContent()).toMatch(new RegExp(`^${ground.title}`, "i"));
		await page.getByText(/^Recipe version 1, as it came with the job/).waitFor();
	},
	2 * SEARCH_MS,
);

test(
	"sizes: a wire the recipe makes, each figure with its source; a fuse; the splice",
	async () => {
		const page = await site.open("#//size?chosen=N06");
		// demo/main/README.md: N06 leads terminal 15 on to the reversing switch.
		await page.getByRole("heading", { name: "N06" }).waitFor({ timeout: SEARCH_MS });
		const carries = page.getByRole("table", { name: "What it carries" });
		expect(await carries.getByRole("row", { name: "Lasting current" }).textContent()).toMatch(/2\.1\d A$/);
		const end = page.getByRole("table", { name: "The end at S-REV.1" });
		await end.getByText("reference/electrical/crimp-pull-force-mm2.csv 013").waitFor();
		await end.getByText("150 N").waitFor();
		await page.getByText("Fuses", { exact: true }).tap();
		await page.getByRole("button", { name: /^F30, 10 A/ }).tap();
		await page.getByText("Largest fuse for its thinnest wire, W428a").waitFor();
		await page.getByText("Splices", { exact: true }).tap();
		await page.getByRole("button", { name: /^SN04/ }).tap();
		await page.getByText(/^Barrel that holds/).waitFor();
	},
	SEARCH_MS,
);

test(
	"what if: a thinner lead of the reversing lamps; a ground; a step left out",
	async () => {
		const page = await site.open("#//size?chosen=W422a");
		await page.getByRole("link", { name: "What if it were another?" }).tap({ timeout: SEARCH_MS });
		await page.getByRole("button", { name: /^Size/ }).tap();
		await page
			.getByRole("group", { name: "Size in mm²" })
			.getByRole("button", { name: /^0\.35/ })
			.tap();
		const effects = page.getByRole("region", { name: "What would happen" });
		await effects.getByText("fuse too large").waitFor({ timeout: SEARCH_MS });
		await effects.getByText("Fuse F30 is larger than its thinnest wire allows.").waitFor();
		await effects.getByRole("heading", { name: /readings move/ }).waitFor();
		const same = await site.api<{ readings: unknown[] }>("what-if", {
			change: { table: "wires", row: "W422a", column: "size", cell: "0.35" },
		});
		await effects.getByText(`${same.readings.length} readings move by more than a meter tells`).waitFor();

		// demo/main/recipe.csv: step 25 grounds the clutch switch on the body.
		await page.getByText("Steps", { exact: true }).tap();
		await page.getByLabel("Search what could be another").fill("25");
		await page.getByRole("navigation", { name: "Steps" }).getByRole("button", { name: /^25/ }).tap();
		await page.getByRole("button", { name: /^To/ }).tap();
		await page.getByRole("group", { name: "Ground points" }).getByRole("button", { name: /^G12/ }).tap();
		await effects.getByText("ground metal").waitFor({ timeout: SEARCH_MS });
		await page.getByRole("button", { name: "Put it into the tables" }).tap();
		await page.getByRole("heading", { name: "recipe.csv: 1 row changes" }).waitFor();
		await page.getByRole("button", { name: "Leave it as it is" }).tap();
		await page.getByRole("button", { name: "Leave step 25 out" }).tap();
		await effects.getByText("Without step 25").waitFor({ timeout: SEARCH_MS });
	},
	2 * SEARCH_MS,
);

test(
	"another car from its table files: what applies, what to decide, what cannot be done there",
	async () => {
		const page = await site.open("#//transfer");
		const files = readdirSync(join(DEMO, "other-market"))
			.filter((name) => name.endsWith(".csv"))
			.map((name) => join(DEMO, "other-market", name));
		const choosing = page.waitForEvent("filechooser");
		await page.getByRole("button", { name: "A car from its table files" }).tap();
		await (await choosing).setFiles(files);
		// demo/other-market/README.md names the conflicts.
		await page.getByRole("button", { name: "7 cannot be done there" }).waitFor({ timeout: SEARCH_MS });
		await page.locator(".travelled-step", { hasText: "X-BD.36b" }).getByText("taken").first().waitFor();
		await page.getByRole("button", { name: "56 apply as they are" }).tap();
		await eventually(() => page.locator(".travelled-step").count()).toBe(56);
		await page.getByText("153 differences of the two cars as delivered").tap();
		await page.getByLabel("Search the differences").fill("X-ICU");
		await page.locator(".plain-list li").first().waitFor();
	},
	SEARCH_MS,
);

test(
	"tables brought in: every error by row and nothing taken; mended, a new version; the old one taken again",
	async () => {
		const recipe = readFileSync(join(DEMO, "main/recipe.csv"), "utf8");
		const folder = join(tmpdir(), `loomwright-tables-${process.pid}`);
		mkdirSync(folder, { recursive: true });
		const file = join(folder, "spring.csv");
		const page = await site.open("#//versions");
		const bring = async (text: string) => {
			writeFileSync(file, text);
			const choosing = page.waitForEvent("filechooser");
			await page.getByRole("button", { name: "Choose files" }).tap();
			await (await choosing).setFiles(file);
		};
		const rows = recipe.split("\n");
		const minutes = rows[0]!.split(",").indexOf("minutes");
		// A row without a quoted cell.
		const at = rows.findIndex((row, k) => k > 0 && !row.includes('"'));
		const [step = ""] = rows[at]!.split(",");
		const withMinutes = (cell: string) =>
			rows.with(at, rows[at]!.split(",").with(minutes, cell).join(",")).join("\n");
		await bring(withMinutes("soon"));
		const alert = page.getByRole("alert");
		await alert.getByText("Nothing was taken in").waitFor();
		const cells = await alert.locator("tbody tr").first().locator("td").allTextContents();
		expect(cells.slice(0, 3)).toEqual(["recipe.csv", String(at + 1), "minutes"]);
		const versions = page.getByRole("navigation", { name: "Versions" }).getByRole("button");
		expect(await versions.count()).toBe(1);

		await bring(withMinutes("33"));
		await page.getByRole("heading", { name: "recipe.csv: 1 row changes" }).waitFor();
		const other = await site.open("#//reading");
		await other.getByRole("heading", { name: "Reading" }).waitFor();
		await page.getByRole("button", { name: "Take them in" }).tap();
		await other.getByText("Somebody replaced recipe.csv.").waitFor();
		await other.getByRole("button", { name: "Open the car anew" }).tap();
		await eventually(() => other.getByText("Somebody replaced recipe.csv.").count()).toBe(0);
		await page.getByText(/^Recipe version 2, by somebody not named/).waitFor({ timeout: SEARCH_MS });
		await versions.filter({ hasText: "Version 2" }).tap();
		const changed = page.locator(".row-changes li");
		await changed.filter({ hasText: step }).getByText("33").waitFor({ timeout: SEARCH_MS });
		expect(await changed.count()).toBe(1);

		await tab(page, "Versions");
		await versions.filter({ hasText: "Version 1" }).tap();
		await page.getByRole("button", { name: "Take this version again" }).tap();
		await page.getByRole("button", { name: "Take version 1 again" }).tap();
		await page.getByText(/^Recipe version 3, by somebody not named/).waitFor({ timeout: SEARCH_MS });
		const { tables } = await site.api<{ tables: Record<string, string> }>("recipe/versions/3");
		expect(tables["recipe.csv"]).toBe(recipe);
	},
	SEARCH_MS,
);

test(
	"what is wanted, stated on the tablet: refused by row, mended, and a joint's risk set anew",
	async () => {
		const page = await site.open("#//plan");
		await page.getByText(/^What is wanted of the car: 37 rows/).tap();
		// demo/main/targets.csv: two wires of 0.5 mm2 for the ground of the clutch signal contact.
		await page.getByRole("button", { name: /^ground of the clutch signal contact S-CLU.4 to/ }).tap();
		const dialog = page.getByRole("dialog", { name: "Wanted" });
		await dialog.getByLabel("Least size, mm²").fill("thick");
		await dialog.getByRole("button", { name: "See what that changes" }).tap();
		await dialog.getByText('"thick" is not a wire size').waitFor();
		await dialog.getByRole("button", { name: "Back to what was stated" }).tap();
		await dialog.getByLabel("Least size, mm²").fill("0.75");
		await dialog.getByRole("button", { name: "See what that changes" }).tap();
		await dialog.getByRole("heading", { name: "targets.csv: 1 row changes" }).waitFor();
		const stands = page.locator(".recipe-stands");
		const [, version = "0"] = /version (\d+)/.exec((await stands.textContent()) ?? "") ?? [];
		await dialog.getByRole("button", { name: "Want it so" }).tap();
		await eventually(() => stands.textContent()).toMatch(new RegExp(`version (?!${version}\\b)`));
		await page.getByText("What work, material and joints cost here").tap({ timeout: SEARCH_MS });
		await page.getByRole("button", { name: /^joint risk, engine bay/ }).tap();
		const price = page.getByRole("dialog", { name: "joint risk, engine bay" });
		await price.getByLabel("Minutes").fill("30");
		await price.getByRole("button", { name: "See what that changes" }).tap();
		await price.getByRole("heading", { name: "costs.csv: 1 row changes" }).waitFor();
		await price.getByRole("button", { name: "Back to the figure" }).tap();
		await price.getByLabel("Minutes").waitFor();
		// The proposal that was asked for comes before the server stops.
		await page.locator(".rivals").waitFor({ state: "attached", timeout: SEARCH_MS });
	},
	SEARCH_MS,
);
