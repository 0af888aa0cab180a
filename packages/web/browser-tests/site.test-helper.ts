/** The shop's real server on a free port with a database of its own, the app as it is built, and a browser. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type RunningServer, startServer } from "@loomwright/shop";
import type { Browser, BrowserContext, BrowserContextOptions, Page } from "playwright-core";
import { type Assertion, afterAll, beforeAll, expect, inject } from "vitest";
import { launchChromium } from "../../../scripts/chromium.js";

export const TABLET = { viewport: { width: 1180, height: 820 }, hasTouch: true } as const;
export const PHONE = { width: 390, height: 844 } as const;

/** Asks again until it is as expected, or long enough for any page to have settled. */
export function eventually(ask: () => unknown): Pick<Assertion<Promise<unknown>>, Matcher> {
	return expect.poll(ask, { timeout: 30_000, interval: 100 });
}

type Matcher = "toBe" | "toEqual" | "toContain" | "toMatch" | "toBeLessThan";

/** Long searches run in the browser; this is how long any one of them may take. */
export const SEARCH_MS = 120_000;

export interface Site {
	readonly address: string;
	/** Opens a page of the app, e.g. `#//find`; its errors fail the test at `finish`. */
	open(hash: string, options?: BrowserContextOptions): Promise<Page>;
	/** Asks the server's own API of the first job, e.g. `entries`. */
	api<T>(path: string, body?: unknown): Promise<T>;
	/** Closes the pages and expects none of them to have reported an error, but for those that fit `expected`. */
	finish(expected?: RegExp): Promise<void>;
}

/** Call once per file, outside of tests. */
export function testSite(): Site {
	const folder = mkdtempSync(join(tmpdir(), "loomwright-web-"));
	let server: RunningServer;
	let browser: Browser;
	let contexts: BrowserContext[] = [];
	let wrong: string[] = [];

	beforeAll(async () => {
		const web = inject("site");
		server = await startServer({ port: 0, host: "127.0.0.1", data: join(folder, "data"), web });
		browser = await launchChromium();
	}, 180_000);

	afterAll(async () => {
		await browser?.close();
		await server?.close();
		rmSync(folder, { recursive: true, force: true });
	});

	return {
		get address() {
			return server.address;
		},
		async open(hash, options = TABLET) {
			// What a page fetches through a service worker cannot be intercepted: only the tests of it allow one.
			const context = await browser.newContext({ serviceWorkers: "block", ...options });
			contexts.push(context);
			const page = await context.newPage();
			page.setDefaultTimeout(30_000);
			page.on("pageerror", (error) => wrong.push(error.message));
			page.on("console", (message) => message.type() === "error" && wrong.push(message.text()));
			await page.goto(`${server.address}/${hash}`);
			return page;
		},
		async api(path, body) {
			const init = {
				method: "POST",
				headers: { "content-type": "application/json" },
				body: JSON.stringify(body),
			};
			const jobs = `${server.address}/api/v1/jobs`;
			const [job] = ((await (await fetch(jobs)).json()) as { jobs: { id: string }[] }).jobs;
			const response = await fetch(`${jobs}/${job!.id}/${path}`, body === undefined ? {} : init);
			expect(response.ok, `${path}: ${response.status}`).toBe(true);
			return response.json();
		},
		async finish(expected) {
			for (const context of contexts) await context.close();
			const found = wrong.filter((text) => !expected?.test(text));
			contexts = [];
			wrong = [];
			expect(found).toEqual([]);
		},
	};
}
