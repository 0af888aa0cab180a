import { defineConfig } from "vitest/config";
import unit from "./vitest.config.js";

/** The tests that drive a real browser; one file at a time, since each starts a browser and a server. */
export default defineConfig({
	...unit,
	test: {
		include: ["{packages/web/browser-tests,scripts}/**/*.browser.ts"],
		fileParallelism: false,
		globalSetup: "packages/web/browser-tests/built-site.setup.ts",
		testTimeout: 60_000,
		hookTimeout: 60_000,
	},
});
