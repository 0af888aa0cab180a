/** Runs klu_bench.c on a network, where a C compiler and KLU are installed. */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { fullMatrix, type Network } from "./network-generator.js";

/** What klu_bench prints: medians in seconds; "lean" is without row scaling and block form. */
export interface KluMedians {
	readonly analyze: number;
	readonly factor: number;
	readonly refactor: number;
	readonly solve: number;
	readonly factorAndSolve: number;
	readonly leanAnalyze: number;
	readonly leanFactor: number;
	readonly leanRefactor: number;
	readonly leanSolve: number;
	readonly leanFactorAndSolve: number;
	/** Entries of L + U. */
	readonly entries: number;
}

/** A compiled klu_bench. */
export interface Klu {
	measure(network: Network, b: Float64Array, seconds: number): KluMedians;
	/** Removes its files. */
	close(): void;
}

/** Compiles klu_bench.c, or says why it cannot. */
export function compileKlu(): Klu | { readonly missing: string } {
	const folder = mkdtempSync(join(tmpdir(), "klu-bench-"));
	const program = join(folder, "klu_bench");
	const source = fileURLToPath(new URL("klu_bench.c", import.meta.url));
	const close = () => rmSync(folder, { recursive: true, force: true });
	const { status, error } = spawnSync("cc", ["-O2", "-o", program, source, "-lklu", "-lm"], {
		stdio: "ignore",
	});
	if (error !== undefined || status !== 0) {
		close();
		return {
			missing: error === undefined ? "libsuitesparse-dev is not installed" : "no C compiler (cc) was found",
		};
	}
	return {
		measure(network, b, seconds) {
			const file = join(folder, "matrix");
			writeFileSync(file, matrixFile(network, b));
			return JSON.parse(execFileSync(program, [file, String(seconds)], { encoding: "utf8" })) as KluMedians;
		},
		close,
	};
}

/** The binary form klu_bench.c reads; this machine's byte order is taken to be little-endian. */
function matrixFile(network: Network, b: Float64Array): Buffer {
	const { colPtr, rowIdx, values } = fullMatrix(network);
	const parts = [Int32Array.of(network.n, rowIdx.length), colPtr, rowIdx, values, b];
	return Buffer.concat(parts.map((a) => Buffer.from(a.buffer, a.byteOffset, a.byteLength)));
}
