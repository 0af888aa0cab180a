import { defineConfig } from "vitest/config";

/** Workspace packages are read as sources, so the tests need no build. */
const conditions = ["source", "node"];

export default defineConfig({
	ssr: { resolve: { conditions } },
	resolve: { conditions },
	test: {
		include: ["packages/*/src/**/*.test.{ts,tsx}", "{scripts,bench}/**/*.test.ts"],
		testTimeout: 60_000,
	},
});
