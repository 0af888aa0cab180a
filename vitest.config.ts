import { defineConfig } from "vitest/config";

export default defineConfig({
	ssr: { resolve: { conditions: ["source", "node", "import", "default"] } },
	resolve: { conditions: ["source", "node", "import", "default"] },
	test: {
		include: [
			"packages/*/src/**/*.test.ts",
			"packages/*/src/**/*.test.tsx",
			"scripts/**/*.test.ts",
			"bench/**/*.test.ts",
		],
		testTimeout: 60000,
	},
});
