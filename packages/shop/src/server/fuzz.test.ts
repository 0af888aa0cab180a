import { expect, test } from "vitest";
import type { Store } from "../store/store.js";
import { COOKIE, CSRF_HEADER } from "./access/guard.js";
import { shopOfTest, type Tablet } from "./access/tablet.test-helper.js";
import { fuzz } from "./fuzz.test-helper.js";

async function everything(store: Store): Promise<string> {
	const lines: string[] = [];
	await store.dump(undefined, async (all) => {
		for await (const line of all) lines.push(line);
	});
	return lines.join("");
}

const headersOf = ({ cookie, csrf }: Tablet) => ({ cookie: `${COOKIE}=${cookie}`, [CSRF_HEADER]: csrf });

test("whatever is sent by whomever: never a failure of the server, a refusal says what to do, nothing changes", async () => {
	const shop = await shopOfTest();
	const { store, app, job } = shop;
	const owner = await shop.owner();
	const lee = await shop.person(owner, "Lee", "apprentice");
	const senders = [
		headersOf(owner),
		headersOf(lee.tablet),
		{},
		{ cookie: `${COOKIE}=nonsense`, origin: "null" },
	];
	const before = await everything(store);
	const { wrong, statuses } = await fuzz(app, job, senders, 1000, 21);
	expect(wrong).toEqual([]);
	expect(Object.keys(statuses).length).toBeGreaterThan(4);
	expect(await everything(store)).toBe(before);
});

test("on a machine without an owner, too", async () => {
	const { store, app, job } = await shopOfTest();
	const before = await everything(store);
	const { wrong } = await fuzz(app, job, [{}], 100, 22);
	expect(wrong).toEqual([]);
	expect(await everything(store)).toBe(before);
});
