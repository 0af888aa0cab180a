import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";

/** Workspace packages are taken from their TypeScript source, so that the app needs no build of them. */
const conditions = ["source", "module", "browser", "development|production", "import", "default"];

export default defineConfig({
	root: import.meta.dirname,
	plugins: [react()],
	resolve: { conditions },
	worker: { format: "es" },
	build: {
		outDir: "dist",
		emptyOutDir: true,
		target: "es2022",
		// The layout worker is one generated file of 1.6 MB, loaded when the first drawing opens.
		chunkSizeWarningLimit: 700,
		// The engine's modules only define things, so the page takes the few it shows (colours) and not the rest.
		rolldownOptions: {
			treeshake: { moduleSideEffects: (id) => !/packages\/(engine|linalg)\/src\//.test(id) },
		},
	},
	server: { proxy: { "/api": process.env.LOOMWRIGHT_SERVER ?? "http://127.0.0.1:8080" } },
});
