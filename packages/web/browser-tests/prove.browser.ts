/** Proving on a tablet: the sheet walked on a car with a blown fuse until that is found; power coming on stage by stage. */
import { resolve } from "node:path";
import { openCar, type ProveSheet, type SheetRow, takeReading } from "@loomwright/engine";
import { readFolder } from "@loomwright/shop";
import type { BrowserContextOptions, Page } from "playwright-core";
import { afterEach, beforeAll, expect, test } from "vitest";
import { looksRight } from "./looks.test-helper.js";
import { eventually, SEARCH_MS, TABLET, testSite } from "./site.test-helper.js";

const site = testSite();
afterEach(() => site.finish());

/** The browser's store with the sheet in it, so that it is computed once. */
let kept: NonNullable<BrowserContextOptions["storageState"]>;
let sheet: ProveSheet;

const open = (hash: string) => site.open(hash, { ...TABLET, storageState: kept });

beforeAll(async () => {
	const page = await site.open("#//prove");
	await page.getByRole("heading", { name: /^Working out the fewest readings/ }).waitFor();
	await page.getByRole("button", { name: "The car stands so" }).waitFor({ timeout: SEARCH_MS });
	[sheet] = (await page.evaluate(keptSheets)) as [ProveSheet];
	kept = await page.context().storageState({ indexedDB: true });
	await site.finish();
}, 2 * SEARCH_MS);

/** In the page: the sheets that the tablet keeps. */
const keptSheets = () =>
	new Promise<ProveSheet[]>((done, fail) => {
		const opening = indexedDB.open("loomwright-prove");
		opening.onerror = fail;
		opening.onsuccess = () => {
			const all = opening.result.transaction("sheets").objectStore("sheets").getAll();
			all.onsuccess = () => done((all.result as { sheet: ProveSheet }[]).map((one) => one.sheet));
		};
	});

const rowsOf = ({ parts }: ProveSheet): SheetRow[] => parts.flatMap((part) => part.rows);

/** Puts in what the meter shows, key by key. */
async function put(page: Page, value: number | "open"): Promise<void> {
	if (value === "open") return page.getByRole("button", { name: "It shows open" }).tap();
	await page.getByRole("radio", { name: "Ω", exact: true }).tap();
	for (const key of value.toFixed(2))
		await page.getByRole("button", { name: key === "." ? "Point" : key, exact: true }).tap();
	await page.getByRole("button", { name: "Enter", exact: true }).tap();
}

test(
	"a blown fuse: rows are right until one is not, finding names rows worth reading, and the fuse comes first",
	async () => {
		const circuit = openCar(readFolder(resolve(import.meta.dirname, "../../../demo/main")).tables).circuit(
			"converted",
		);
		// A blown fuse reads as one pulled out.
		const shows = ({ question }: SheetRow): number | "open" =>
			takeReading(circuit, { ...question, when: `${question.when}; F34=pulled` }).value ?? "open";
		const page = await open("#//prove");
		await page.getByRole("button", { name: "The car stands so" }).tap();
		const wrong = page.getByRole("alert").getByText("Not right", { exact: true });
		const find = page.getByRole("button", { name: "Find the cause" });
		let taken = 0;
		for (const row of rowsOf(sheet)) {
			await page.getByRole("region", { name: `Row ${row.number}`, exact: true }).waitFor();
			await put(page, shows(row));
			taken += 1;
			if (row.catches.includes("fuse blown:F34")) break;
			await page.getByText(`Row ${row.number}: `).first().waitFor({ state: "attached" });
		}
		await wrong.waitFor();
		expect(taken).toBeGreaterThan(1);
		await eventually(async () => (await site.api<{ entries: unknown[] }>("entries")).entries.length).toBe(
			taken,
		);

		const top = page.locator(".ranking-row strong").first();
		const offered = page.getByRole("region", { name: "Rows of the prove sheet worth reading" });
		// One reading alone is likelier a slip of the leads than a fault.
		await find.tap();
		const again = page.getByRole("region", { name: "Reading to take once more" });
		await again.getByRole("heading", { name: /^Once more: Ohms from/ }).waitFor({ timeout: SEARCH_MS });
		await again.getByText(/a slip of the leads is still likelier/).waitFor();
		await page.goBack();
		for (;;) {
			await find.tap();
			await page.getByText("Up to date with what was seen.").waitFor({ timeout: SEARCH_MS });
			// With the battery off nothing is offered that needs it on.
			expect(await page.getByRole("region", { name: "Next reading" }).count()).toBe(0);
			if ((await top.textContent())!.includes("(F34)")) break;
			const next = offered.getByRole("link").first();
			const number = Number(await next.locator(".prove-number").textContent());
			await next.tap();
			const stand = page.getByRole("button", { name: "The car stands so" });
			const region = page.getByRole("region", { name: `Row ${number}`, exact: true });
			await stand.or(region).first().waitFor();
			if (await stand.isVisible()) await stand.tap();
			await region.waitFor();
			await put(page, shows(rowsOf(sheet)[number - 1]!));
			taken += 1;
			await find.waitFor();
		}
		expect(taken).toBeLessThan(15);
		await page.goto(`${site.address}/#//prove?view=list`);
		await page
			.getByText(`${taken} of ${rowsOf(sheet).length}`)
			.first()
			.waitFor();
		// Kept from before and not computed again.
		expect(await page.evaluate(keptSheets)).toHaveLength(1);
	},
	4 * SEARCH_MS,
);

test(
	"the screens of the sheet",
	async () => {
		const page = await open("#//prove");
		await looksRight(page);
		await page.setViewportSize(TABLET.viewport);
		await page.getByRole("button", { name: "The car stands so" }).tap();
		const [first] = rowsOf(sheet);
		await put(page, first!.value! * 3);
		await page.getByRole("alert").waitFor();
		await looksRight(page);
		await page.setViewportSize(TABLET.viewport);
		await page.getByRole("button", { name: "Leave it out" }).tap();
		await page.getByRole("button", { name: "It cannot be reached" }).tap();
		await page.getByRole("region", { name: "Row 2", exact: true }).waitFor();
		await looksRight(page);
		await page.setViewportSize(TABLET.viewport);
		await page.getByRole("radio", { name: "What it cannot show" }).tap();
		const { faults, caught } = sheet.coverage;
		await page
			.getByRole("heading", { name: `The sheet shows ${caught} of ${faults} single mistakes` })
			.waitFor();
		await page.getByRole("radio", { name: "List" }).tap();
		await page.getByRole("radio", { name: "Left out 1" }).tap();
		await page.getByRole("button", { name: /^1/ }).waitFor();
		await looksRight(page);
	},
	2 * SEARCH_MS,
);

test(
	"power-up: locked until the sheet and each stage hold; a wrong reading stops it and goes to finding",
	async () => {
		const page = await open("#//power");
		const gate = page.getByRole("button", { name: /^On to stage/ });
		await page.getByText(/Not yet: \d+ to read/).waitFor();
		await put(page, "open");
		await page.getByText("right: open").waitFor();
		expect(await gate.isEnabled()).toBe(false);
		await soundSheet(page);
		await page.getByText("Every row of the prove sheet passes. It does.").waitFor();

		await page.getByRole("button", { name: /^4\. fuse/ }).tap();
		await page.getByText("It opens when stage 1").waitFor();
		expect(await gate.count()).toBe(0);
		await page.getByRole("button", { name: "To stage 1" }).tap();
		await gate.tap();

		// The lamp: a reading that no condition says, and one thing to see.
		await page.getByRole("article", { name: "Stage 2" }).waitFor();
		await volts(page, "12.6");
		expect(await gate.isEnabled()).toBe(false);
		await page.getByLabel(/^The lamp stays dark/).check();
		await gate.tap();

		// Battery on: one of its five readings is too low.
		await page.getByRole("article", { name: "Stage 3" }).waitFor();
		await page.getByLabel("No relay moves.").check();
		await volts(page, "12.6");
		await volts(page, "9.8");
		await page.getByRole("alert").getByText("Stop.").waitFor();
		expect(await gate.isEnabled()).toBe(false);
		await looksRight(page);
		await page.setViewportSize(TABLET.viewport);
		await page.getByRole("button", { name: /not right: 9\.80 V/ }).tap();
		for (let left = 4; left > 0; left--) await volts(page, "12.6");
		await gate.tap();
		await page.getByRole("article", { name: "Stage 4" }).waitFor();

		// What was read before may be looked at again; put wrong, it locks all after it.
		await page.getByRole("button", { name: /^3\. battery connected/ }).tap();
		await page
			.getByRole("button", { name: /right: 12\.6 V/ })
			.first()
			.tap();
		await volts(page, "0.1");
		await page.getByRole("button", { name: /^4\. fuse.*locked/ }).waitFor();
		await page.getByRole("button", { name: "Find the cause" }).tap();
		await page.getByRole("heading", { level: 1, name: "Find" }).waitFor();
		await eventually(() => page.locator(".acts > li").last().textContent()).toContain("12.6 V");
		const { entries } = await site.api<{ entries: { kind: string; body: { text?: string } }[] }>("entries");
		const notes = entries.map(({ body }) => body.text ?? "");
		expect(notes.some((text) => /^Power-up, battery through a test lamp.*: 12\.6 V from/.test(text))).toBe(
			true,
		);
		expect(notes.some((text) => /^Power-up, battery connected, every fuse out: holds\./.test(text))).toBe(
			true,
		);
	},
	2 * SEARCH_MS,
);

async function volts(page: Page, value: string): Promise<void> {
	await page.getByLabel("The meter shows, in V").fill(value);
	await page.getByRole("button", { name: "Enter", exact: true }).tap();
}

/** Every row of the sheet as a sound car shows it, straight into the tablet's own store. */
async function soundSheet(page: Page): Promise<void> {
	const { jobs } = (await (await fetch(`${site.address}/api/v1/jobs`)).json()) as { jobs: { id: string }[] };
	const taken = Object.fromEntries(
		rowsOf(sheet).map(({ question: { from, to, when }, value }) => [
			`${from} ${to} ${when}`,
			{ value: value ?? "open" },
		]),
	);
	await page.evaluate(([key, text]) => localStorage.setItem(key, text), [
		`loomwright-prove-${jobs[0]!.id}`,
		JSON.stringify({ taken, standing: "" }),
	] as const);
	await page.reload();
}
