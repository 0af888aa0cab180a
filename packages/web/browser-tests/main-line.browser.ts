/** The main line as a person walks it on a tablet: changes, checks, reading, find. */
import { afterEach, expect, test } from "vitest";
import { eventually, SEARCH_MS, testSite } from "./site.test-helper.js";

const site = testSite();
afterEach(() => site.finish());

interface ReadingAnswer {
	readonly value: number;
	readonly low: number;
	readonly high: number;
}

test("the app opens on the demo job and leads along the line", async () => {
	const page = await site.open("");
	await page.getByRole("heading", { level: 1, name: "The camper" }).waitFor();
	await page.getByText("What this is not.").waitFor();
	await page.getByRole("link", { name: "Begin with the changes" }).tap();
	await page.getByRole("heading", { level: 1, name: "Changes" }).waitFor();
	const stages = page.getByRole("navigation", { name: "The line of work" }).getByRole("link");
	expect(await stages.allTextContents()).toEqual([
		"Choose",
		"Changes",
		"Checks",
		"Reading",
		"Prove",
		"Power up",
		"Find",
	]);
	expect(await stages.nth(1).getAttribute("aria-current")).toBe("page");
});

test("changes per connector and cavity; the recipe's steps with their minutes; both filtered", async () => {
	const page = await site.open("#//changes");
	const list = page.getByRole("navigation", { name: "Connectors" });
	await list.getByRole("button").first().waitFor();
	const all = await list.getByRole("button").count();
	expect(all).toBeGreaterThan(20);
	await page.getByLabel("Search the changes").fill("X-ECUB");
	await eventually(() => list.getByRole("button").count()).toBeLessThan(all);
	await list.getByRole("button", { name: /^X-ECUB/ }).tap();
	// demo/main/README.md: the new wire N10 to ECU.B47 ties the sensor returns.
	const tie = page.locator(".cavity", { hasText: "N10" });
	await tie.getByText("empty").waitFor();
	expect(await tie.locator(".cavity-name .mono").textContent()).toBe("47");
	await tie.getByRole("button", { name: "Drawing" }).tap();
	await tie.locator('[data-wire="N10"]').waitFor();
	await page.getByText("Steps in order").tap();
	await page.getByLabel("Search the changes").fill("");
	// demo/main/README.md: 68 steps of 10 kinds.
	await page.getByText(/^68 steps, 6 h/).waitFor();
	expect(await page.locator(".step").count()).toBe(68);
	await page.getByLabel("Place on the car").selectOption("pedal box");
	await eventually(() => page.locator(".step").count()).toBeLessThan(20);
	expect(new Set(await page.locator(".step-place").allTextContents())).toEqual(new Set(["pedal box"]));
});

test("a finding with its reason, its mending and its path drawn", async () => {
	const { findings } = await site.api<{ findings: { where: string; why: string; mend: string }[] }>(
		"findings?of=converted",
	);
	const page = await site.open("#//checks");
	const rows = page.getByRole("navigation", { name: "Findings" }).getByRole("button");
	await rows.first().waitFor({ timeout: SEARCH_MS });
	expect(await rows.count()).toBe(findings.length);
	await rows.first().tap();
	const detail = page.locator(".finding");
	await detail.getByText(findings[0]!.why).waitFor();
	await detail.getByText(findings[0]!.mend).waitFor();
	const drawing = detail.getByRole("img", { name: /^Circuit drawing/ });
	await drawing.waitFor();
	expect(await drawing.locator(".draw-node").count()).toBeGreaterThan(0);
	await page.getByText("As delivered").tap();
	await eventually(() => page.url()).toContain("loom=delivered");
});

test("a reading between two picked contacts is the server's answer too", async () => {
	const page = await site.open("#//reading");
	for (const [lead, contact] of [
		["Lead 1, red", "ECU.B28"],
		["Lead 2, black", "BAT.-"],
	] as const) {
		await page.getByRole("button", { name: lead }).tap();
		const dialog = page.getByRole("dialog", { name: lead });
		await dialog.getByLabel("Search").fill(contact);
		await dialog.locator(".row", { hasText: contact }).first().tap();
		await dialog.waitFor({ state: "hidden" });
	}
	await page.getByLabel("How the car stands").selectOption("key-on");
	const question = { what: "volts", from: "ECU.B28", to: "BAT.-", when: "key-on", of: "converted" };
	const { value } = await site.api<ReadingAnswer>("reading", question);
	const shown = page.locator(".answer-value");
	await eventually(() => shown.textContent()).toBe(`${value.toFixed(2)} V`);
	await page.getByRole("img", { name: /^Number line/ }).waitFor();
	await page.locator('.draw-lead[data-lead="1"]').waitFor();
	await page.locator('.draw-lead[data-lead="2"]').waitFor();
});

test("a tap on a wire tells its size and length, and its current and volts in the condition", async () => {
	const page = await site.open("#//reading?from=K1.87&to=F14.out&what=volts&when=key-on");
	await page.locator('[data-wire="W121"]').waitFor();
	await page.locator(".draw-frame").scrollIntoViewIfNeeded();
	const at = (await page.locator('[data-wire="W121"] .draw-wire-edge').boundingBox())!;
	await page.touchscreen.tap(at.x + at.width / 2, at.y + at.height / 2);
	const panel = page.getByRole("region", { name: "Wire W121" });
	await panel.getByText("4 mm²").waitFor();
	await panel.getByText("150 mm").waitFor();
	await panel.getByText("red/blue (RDBU)").waitFor();
	await eventually(() => panel.textContent()).toMatch(/Volts at from12\.\d V.*Current\d+ mA/);
});

test("a tap on a contact puts a lead there; a drag moves the drawing and taps nothing", async () => {
	const page = await site.open("#//reading?from=K1.87&to=F14.out&what=volts&when=key-on");
	const contact = page.locator('[data-contact="F14.in"] circle');
	await contact.waitFor();
	await page.locator(".draw-frame").scrollIntoViewIfNeeded();
	const centre = async () => {
		const { x, y, width, height } = (await contact.boundingBox())!;
		return { x: x + width / 2, y: y + height / 2 };
	};
	const before = await centre();
	await page.mouse.move(before.x, before.y);
	await page.mouse.down();
	await page.mouse.move(before.x + 60, before.y - 30, { steps: 5 });
	await page.mouse.up();
	const after = await centre();
	expect(after.x - before.x).toBeCloseTo(60, -1);
	expect(after.y - before.y).toBeCloseTo(-30, -1);
	expect(await page.getByRole("button", { name: "Lead 2 here" }).count()).toBe(0);
	await page.touchscreen.tap(after.x, after.y);
	await page.getByRole("button", { name: "Lead 2 here" }).tap();
	await eventually(() => page.url()).toContain("to=F14.in");
	await page.getByRole("button", { name: /^Lead 2, black F14\.in/ }).waitFor();
});

test("a reading that was taken is told against the band and goes into the history", async () => {
	const page = await site.open("#//reading?from=BAT.%2B&to=BAT.-&what=volts&when=key-on");
	await page.getByLabel("The meter shows").fill("9,1");
	await page.getByRole("button", { name: "Enter" }).tap();
	await page.getByText("below the band of a sound car").waitFor();
	await page.getByText("Written into the job's history.").waitFor();
	const { entries } = await site.api<{ entries: { kind: string; body: unknown }[] }>("entries");
	expect(entries.at(-1)).toMatchObject({
		kind: "reading",
		body: { what: "volts", from: "BAT.+", to: "BAT.-", when: "key-on", value: 9.1 },
	});
});
