/** Nearly right requests to a shop with an owner, an apprentice, a stranger; what came of them. */
import { createHash } from "node:crypto";
import { fileURLToPath } from "node:url";
import { readFolder } from "@loomwright/shop";
import { COOKIE, CSRF_HEADER } from "../../packages/shop/src/server/access/guard.js";
import { buildApp } from "../../packages/shop/src/server/app.js";
import { fuzz } from "../../packages/shop/src/server/fuzz.test-helper.js";
import { Store } from "../../packages/shop/src/store/store.js";

const folder = fileURLToPath(new URL("../../demo/small", import.meta.url));

export interface FuzzedShop {
	readonly requests: number;
	readonly wrong: readonly string[];
	readonly changed: boolean;
}

/** @param where a database that is empty */
export async function fuzzed(where: string, web: string, count: number, seed: number): Promise<FuzzedShop> {
	const store = await Store.open(where);
	const { title, tables, practice } = readFolder(folder);
	const { id: job } = await store.addJob({ title, source: "", tables, practice });
	const app = await buildApp({ store, web, report: (error) => console.error(error) });
	const post = async (url: string, payload: object, headers: Record<string, string> = {}) => {
		const answer = await app.inject({ method: "POST", url: `/api/v1/${url}`, payload, headers });
		const cookie = answer.cookies.find(({ name }) => name === COOKIE)?.value ?? "";
		const { id, csrf } = answer.json() as { id: string; csrf: string };
		return { id, own: { cookie: `${COOKIE}=${cookie}`, [CSRF_HEADER]: csrf } };
	};
	const owner = await post("setup", { name: "Ola", pin: "270385" });
	const person = await post("people", { name: "Lee", role: "apprentice", pin: "906142" }, owner.own);
	const apprentice = await post("session", { person: person.id, pin: "906142" });
	const before = await everything(store);
	const { wrong } = await fuzz(app, job, [owner.own, apprentice.own, {}], count, seed);
	const changed = (await everything(store)) !== before;
	await app.close();
	await store.close();
	return { requests: count, wrong, changed };
}

/** SHA-256 of all that is stored. */
async function everything(store: Store): Promise<string> {
	const hash = createHash("sha256");
	await store.dump(undefined, async (lines) => {
		for await (const line of lines) hash.update(line);
	});
	return hash.digest("hex");
}
