/** Batches in a real browser's workers: the code that Node's threads run, and the same bits. */
import { dirname } from "node:path";
import { fileURLToPath } from "node:url";
import { workBatches } from "@loomwright/engine";
import { readFolder } from "@loomwright/shop";
import { build, type Rolldown } from "vite";
import { expect, onTestFinished, test } from "vitest";
import { launchChromium } from "../../../scripts/chromium.js";
import { jobOf, PIECE, printOf } from "./batches/job.js";

const page = fileURLToPath(new URL("./batches/page.ts", import.meta.url));
const demo = fileURLToPath(new URL("../../../demo/small/", import.meta.url));

/** The page with its worker, file name to contents. */
async function built(): Promise<Map<string, string>> {
	const result = (await build({
		configFile: false,
		logLevel: "error",
		root: dirname(page),
		base: "/",
		resolve: { conditions: ["source", "browser", "import", "default"] },
		worker: { format: "es" },
		build: {
			write: false,
			target: "es2022",
			rolldownOptions: {
				input: page,
				output: { entryFileNames: "page.js" },
			},
		},
	})) as Rolldown.RolldownOutput;
	return new Map(
		result.output.map((file) => [
			`/${file.fileName}`,
			file.type === "chunk" ? file.code : String(file.source),
		]),
	);
}

test("two workers give, piece by piece, the bits of the page alone and of Node", async () => {
	const files = await built();
	expect([...files.keys()].some((name) => name.includes("worker"))).toBe(true);
	const browser = await launchChromium();
	onTestFinished(() => browser.close());
	const tab = await browser.newPage();
	const errors: string[] = [];
	tab.on("pageerror", (error) => errors.push(error.message));
	await tab.context().route("http://page.test/**", (route) => {
		const path = new URL(route.request().url()).pathname;
		const html = '<!doctype html><script type="module" src="/page.js"></script>';
		if (path === "/") return route.fulfill({ contentType: "text/html", body: html });
		const body = files.get(path);
		return body === undefined
			? route.fulfill({ status: 404 })
			: route.fulfill({ contentType: "text/javascript", body });
	});
	await tab.goto("http://page.test/");
	const { tables } = readFolder(demo);
	const { alone, spread } = await tab.evaluate((given) => window.batches(given, 2), tables);
	expect(errors).toEqual([]);
	expect(alone.length).toBeGreaterThan(10);
	expect(spread).toEqual(alone);
	expect(alone).toEqual(Array.from(workBatches(jobOf(tables), { pieceBytes: PIECE }), printOf));
});
