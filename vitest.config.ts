import { defineConfig } from "vitest/config";

/** Workspace packages are read as sources, so the tests need no build. */
const conditions = ["source", "node"];

export default defineConfig({
	ssr: { resolve: { conditions } },
	resolve: { conditions },
	test: {
		include: ["packages/*/src/**/*.test.{ts,tsx}", "{scripts,bench}/**/*.test.ts"],
		// Nothing here keeps state between files, and loading each module once more than halves the time.
		isolate: false,
		testTimeout: 60_000,
	},
});
