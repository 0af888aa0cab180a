/** Half an hour of work of many tablets against the shop's real server in a process of its own, compressed. */
import { spawn } from "node:child_process";
import { once } from "node:events";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { createInterface } from "node:readline";
import { setTimeout as sleep } from "node:timers/promises";
import { fileURLToPath } from "node:url";
import { COOKIE, CSRF_HEADER } from "../../packages/shop/src/server/access/guard.js";
import { Store } from "../../packages/shop/src/store/store.js";
import { seeded } from "./random.js";
import { type Shop, Tablet } from "./tablet.js";

const root = fileURLToPath(new URL("../../", import.meta.url));

/** Cars in the shop at once. */
const JOBS = 5;
const PIN = "270385";
/** Waits until the process has its code compiled and its caches full before memory is compared. */
const SETTLED = 0.35;

export interface Day {
	readonly sent: number;
	readonly lost: number;
	readonly doubled: number;
	/** Tablets whose entries are not in the order they wrote them. */
	readonly disordered: number;
	readonly fault: string | undefined;
	readonly requests: number;
	/** In milliseconds. */
	readonly median: number;
	readonly p99: number;
	/** Resident memory of the server at the end against that after it settled. */
	readonly growth: number;
	/** In MiB. */
	readonly memory: number;
}

/**
 * @param steps sign-offs of each tablet
 * @param stepMs how long the half minute between two of them takes here
 */
export async function day(
	data: string,
	tablets: number,
	steps: number,
	stepMs: number,
	seed: number,
): Promise<Day> {
	const random = seeded(seed);
	const server = spawn(
		process.execPath,
		["packages/cli/dist/main.js", "serve", "demo/small", "--data", data, "--port", "0"],
		{ cwd: root, stdio: ["ignore", "pipe", "inherit"] },
	);
	const ended = once(server, "exit");
	try {
		let address = "";
		for await (const line of createInterface({ input: server.stdout })) {
			address = /http:\/\/127\.0\.0\.1:\d+/.exec(line)?.[0] ?? "";
			if (address !== "") break;
		}
		const shop: Shop = { address, took: [] };
		const jobs = await addJobs(data);
		const all = await signedIn(shop, tablets, jobs, random);
		const memory: number[] = [];
		const listening = all.map((tablet) => tablet.listen());
		const work = Promise.all(
			all.map(async (tablet) => {
				await sleep(random() * stepMs);
				for (let n = 0; n < steps; n += 1) {
					const began = performance.now();
					await tablet.step();
					await sleep(Math.max(0, stepMs - (performance.now() - began)));
				}
				await tablet.send(true);
			}),
		);
		let working = true;
		const watch = (async () => {
			while (working) {
				memory.push(residentMiB(server.pid!));
				await sleep(500);
			}
		})();
		await Promise.race([work, Promise.all(listening).then(() => work)]);
		working = false;
		await watch;
		for (const tablet of all) tablet.stop();
		await Promise.all(listening);
		return { ...figures(shop.took, memory), ...(await checked(data, jobs, all)) };
	} finally {
		server.kill("SIGTERM");
		await ended;
	}
}

/** Further cars, put in beside the running server. */
async function addJobs(data: string): Promise<string[]> {
	const store = await Store.open(join(data, "loomwright.db"));
	const [first] = await store.jobs();
	const tables = await store.tables(first!.id);
	for (let n = 1; n < JOBS; n += 1)
		await store.addJob({ title: `Car ${n}`, source: "", tables, practice: {} });
	const ids = (await store.jobs()).map(({ id }) => id);
	await store.close();
	return ids;
}

/** Each tablet with a technician of its own. */
async function signedIn(
	shop: Shop,
	count: number,
	jobs: readonly string[],
	random: () => number,
): Promise<Tablet[]> {
	const ask = async (path: string, body: unknown, headers: Record<string, string>) => {
		const response = await fetch(`${shop.address}/api/v1/${path}`, {
			method: "POST",
			headers: { ...headers, "content-type": "application/json" },
			body: JSON.stringify(body),
		});
		const answer = (await response.json()) as { id: string; csrf: string; error?: string };
		if (!response.ok) throw new Error(`${path}: ${answer.error}`);
		const cookie = response.headers.get("set-cookie")?.split(";", 1)[0] ?? "";
		return { id: answer.id, own: { cookie, [CSRF_HEADER]: answer.csrf } };
	};
	const owner = await ask("setup", { name: "Ola", pin: PIN }, {});
	const tablets: Tablet[] = [];
	for (let n = 0; n < count; n += 1) {
		const person = await ask("people", { name: `Person ${n}`, role: "technician", pin: PIN }, owner.own);
		// As through a proxy on this machine: each tablet has an address of its own.
		const from = { "x-forwarded-for": `10.0.0.${n + 1}` };
		const { own } = await ask("session", { person: person.id, pin: PIN }, from);
		tablets.push(
			new Tablet(shop, n, jobs[n % jobs.length]!, { ...own, ...from }, seeded(n + random() * 1e6)),
		);
	}
	if (!tablets.every(({ headers }) => headers.cookie?.startsWith(`${COOKIE}=`)))
		throw new Error("no session");
	return tablets;
}

async function checked(data: string, jobs: readonly string[], tablets: readonly Tablet[]) {
	const store = await Store.open(join(data, "loomwright.db"));
	const stored: string[] = [];
	let fault: string | undefined;
	for (const job of jobs) {
		stored.push(...(await store.entries(job)).map(({ id }) => id));
		fault ??= await store.verify(job);
	}
	await store.close();
	const there = new Set(stored);
	const sent = tablets.flatMap(({ written }) => written);
	const disordered = tablets.filter(({ number, written }) => {
		const own = stored.filter((id) => id.startsWith(`tablet-${number}-`));
		return own.join() !== written.join();
	});
	return {
		sent: sent.length,
		lost: sent.filter((id) => !there.has(id)).length,
		doubled: stored.length - there.size,
		disordered: disordered.length,
		fault,
	};
}

function figures(took: readonly number[], memory: readonly number[]) {
	const sorted = took.toSorted((a, b) => a - b);
	const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
	const mean = (list: readonly number[]) => list.reduce((sum, one) => sum + one, 0) / list.length;
	const settled = memory.slice(Math.floor(memory.length * SETTLED));
	const third = Math.ceil(settled.length / 3);
	return {
		requests: took.length,
		median: at(0.5),
		p99: at(0.99),
		growth: mean(settled.slice(-third)) / mean(settled.slice(0, third)),
		memory: mean(settled.slice(-third)),
	};
}

/** Resident memory, from /proc (Linux). */
function residentMiB(pid: number): number {
	const kibibytes = /VmRSS:\s+(\d+) kB/.exec(readFileSync(`/proc/${pid}/status`, "utf8"))?.[1];
	return Number(kibibytes) / 1024;
}
