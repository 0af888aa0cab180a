/** The app built once for all files of browser tests, as it is built for the shop. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { build } from "vite";
import type { TestProject } from "vitest/node";

declare module "vitest" {
	interface ProvidedContext {
		/** Folder of the built app. */
		readonly site: string;
	}
}

export default async function setUp(project: TestProject): Promise<() => void> {
	const outDir = mkdtempSync(join(tmpdir(), "loomwright-site-"));
	const { NODE_ENV } = process.env;
	// Not the slower React that tests would be given.
	process.env.NODE_ENV = "production";
	const configFile = resolve(import.meta.dirname, "../vite.config.ts");
	await build({ configFile, logLevel: "error", build: { outDir, emptyOutDir: true } });
	if (NODE_ENV === undefined) delete process.env.NODE_ENV;
	else process.env.NODE_ENV = NODE_ENV;
	project.provide("site", outDir);
	return () => rmSync(outDir, { recursive: true, force: true });
}
