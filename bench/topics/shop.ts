/** The shop's database and server: killed, crowded, and sent nonsense. About four minutes. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { startPostgres } from "../../packages/shop/src/store/postgres.test-helper.js";
import type { Figure } from "../figure.js";
import { day } from "../shop/day.js";
import { fuzzed } from "../shop/fuzzed.js";
import { killed } from "../shop/killed.js";

const KILLS = 200;
const TABLETS = 50;
/** One sign-off in half a minute, for half an hour. */
const STEPS = 60;
const STEP_MS = 800;
const FUZZED = 10_000;

export async function* run(): AsyncGenerator<Figure> {
	const folder = mkdtempSync(join(tmpdir(), "loomwright-bench-"));
	const postgres = await startPostgres(true);
	const databases = [
		["embedded", async (name: string) => join(folder, `${name}.db`)],
		["PostgreSQL", () => postgres.database()],
	] as const;
	try {
		for (const [kind, empty] of databases) {
			const { acknowledged, lost, fault } = await killed(await empty("killed"), KILLS, 7);
			const figure = (what: string) => `${kind}, killed (SIGKILL) ${KILLS} times: ${what}`;
			yield { figure: figure("acknowledged"), value: acknowledged, unit: "sign-offs" };
			yield { figure: figure("lost of those"), value: lost, unit: "sign-offs", goal: { atMost: 0 } };
			yield { figure: figure("broken chains"), value: fault ? 1 : 0, unit: "chains", goal: { atMost: 0 } };
		}
		yield* crowded(join(folder, "day"));
		for (const [kind, empty] of databases) {
			const { requests, wrong, changed } = await fuzzed(await empty("fuzzed"), folder, FUZZED / 2, 11);
			for (const one of wrong.slice(0, 5)) console.error(one);
			const figure = (what: string) => `${kind}, ${requests} fuzzed requests: ${what}`;
			yield {
				figure: figure("failures, traces, refusals without help"),
				value: wrong.length,
				unit: "answers",
				goal: { atMost: 0 },
			};
			yield { figure: figure("changes"), value: changed ? 1 : 0, unit: "changes", goal: { atMost: 0 } };
		}
	} finally {
		await postgres.stop();
		rmSync(folder, { recursive: true, force: true });
	}
}

async function* crowded(data: string): AsyncGenerator<Figure> {
	const found = await day(data, TABLETS, STEPS, STEP_MS, 3);
	const figure = (what: string) =>
		`${TABLETS} tablets, half an hour in ${(STEPS * STEP_MS) / 1000} s: ${what}`;
	yield { figure: figure("sent"), value: found.sent, unit: "sign-offs" };
	yield { figure: figure("lost"), value: found.lost, unit: "sign-offs", goal: { atMost: 0 } };
	yield { figure: figure("stored twice"), value: found.doubled, unit: "sign-offs", goal: { atMost: 0 } };
	yield {
		figure: figure("out of their order"),
		value: found.disordered,
		unit: "tablets",
		goal: { atMost: 0 },
	};
	yield { figure: figure("broken chains"), value: found.fault ? 1 : 0, unit: "chains", goal: { atMost: 0 } };
	yield { figure: figure("requests"), value: found.requests, unit: "requests" };
	yield { figure: figure("a request, median"), value: found.median / 1000, unit: "s" };
	yield { figure: figure("a request, 99 of 100"), value: found.p99 / 1000, unit: "s", goal: { below: 0.25 } };
	yield { figure: figure("memory at the end"), value: found.memory, unit: "MiB" };
	yield { figure: figure("memory at the end / before"), value: found.growth, unit: "", goal: { below: 1.2 } };
}
