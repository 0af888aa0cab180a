/**
 * Pictures of pages, to look at by hand: tablet and phone, light and dark.
 *
 * Usage: npm run shots -- [--base http://127.0.0.1:8080] [--out shots] [--full] [PATH ...]
 * Each PATH is a page, such as `/` or `/#/find`; without one, `/`. Says where a page is wider than the screen
 * or reports an error. Exit code 1 when it does, or when nothing answers at the address.
 */
import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { parseArgs } from "node:util";
import type { Browser } from "playwright-core";
import { launchChromium } from "./chromium.js";

/** Screen sizes in CSS pixels. */
const SCREENS = {
	tablet: { viewport: { width: 1180, height: 820 }, hasTouch: true, isMobile: false },
	phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
} as const;
const SCHEMES = ["light", "dark"] as const;

/** `/#/find?x=1` gives `find-x-1`; `/` gives `start`. */
const fileName = (path: string): string => path.replace(/[^\w]+/g, "-").replace(/^-|-$/g, "") || "start";

/** Takes one picture. @returns what is wrong with the page, nothing when all is well */
async function shoot(
	browser: Browser,
	url: string,
	file: string,
	screen: keyof typeof SCREENS,
	colorScheme: (typeof SCHEMES)[number],
	fullPage: boolean,
): Promise<string[]> {
	const context = await browser.newContext({ ...SCREENS[screen], colorScheme });
	const page = await context.newPage();
	const wrong: string[] = [];
	page.on("pageerror", (error) => wrong.push(error.message));
	page.on("console", (message) => message.type() === "error" && wrong.push(message.text()));
	try {
		await page.goto(url, { waitUntil: "load" });
		// A page that keeps a stream open is never idle; then the picture is taken all the same.
		await page.waitForLoadState("networkidle", { timeout: 5000 }).catch(() => undefined);
		const wide = await page.evaluate(() => document.documentElement.scrollWidth);
		const { width } = SCREENS[screen].viewport;
		if (wide > width) wrong.push(`the page is ${wide} pixels wide, the screen ${width}`);
		await page.screenshot({ path: file, fullPage });
	} finally {
		await context.close();
	}
	return wrong;
}

const { values, positionals } = parseArgs({
	allowPositionals: true,
	options: {
		base: { type: "string", default: "http://127.0.0.1:8080" },
		out: { type: "string", default: "shots" },
		full: { type: "boolean", default: false },
	},
});
mkdirSync(values.out, { recursive: true });
const browser = await launchChromium();
try {
	for (const path of positionals.length > 0 ? positionals : ["/"])
		for (const screen of Object.keys(SCREENS) as (keyof typeof SCREENS)[])
			for (const scheme of SCHEMES) {
				const file = join(values.out, `${fileName(path)}-${screen}-${scheme}.png`);
				const url = new URL(path, values.base).href;
				const wrong = await shoot(browser, url, file, screen, scheme, values.full);
				console.log([file, ...wrong].join("\n  wrong: "));
				if (wrong.length > 0) process.exitCode = 1;
			}
} catch (error) {
	console.error(error instanceof Error ? error.message : error);
	console.error(`Is the app running at ${values.base}? Start it with npm start, or give --base.`);
	process.exitCode = 1;
} finally {
	await browser.close();
}
