import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, test } from "vitest";
import { launchChromium } from "./chromium.js";

let browser: Browser;
beforeAll(async () => {
	browser = await launchChromium();
});
afterAll(() => browser?.close());

const picture = async (body: string): Promise<Buffer> => {
	const page = await browser.newPage({ viewport: { width: 300, height: 100 } });
	await page.goto(`data:text/html;charset=utf-8,${encodeURIComponent(body)}`);
	const png = await page.screenshot();
	await page.close();
	return png;
};

test("the browser starts and takes a picture", async () => {
	const png = await picture("<body style='background:tomato'>");
	expect(png.subarray(1, 4).toString()).toBe("PNG");
	expect(png.readUInt32BE(16)).toBe(300);
	expect(png.readUInt32BE(20)).toBe(100);
});

test("it has fonts: text leaves ink", async () => {
	expect((await picture("12.6 V")).equals(await picture(""))).toBe(false);
});
