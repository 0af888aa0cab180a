import { describe, expect, test } from "vitest";
import { FOUND } from "../../people/history.test-helper.js";
import { shopOfTest, type Tablet } from "./tablet.test-helper.js";

async function shopWithPeople() {
	const shop = await shopOfTest();
	const owner = await shop.owner();
	const kim = await shop.person(owner, "Kim", "technician");
	const lee = await shop.person(owner, "Lee", "apprentice");
	const at = `/api/v1/jobs/${shop.job}`;
	const write = (tablet: Tablet, kind: string, body: object, more: object = {}) =>
		tablet.ask("POST", `${at}/entries`, { kind, body, ...more });
	const step = async (name: string) => {
		const { steps } = (await owner.ask("GET", `${at}/state`)).body;
		return steps.find((one: { step: string }) => one.step === name);
	};
	return { ...shop, owner, kim, lee, at, write, step };
}

describe("signing", () => {
	test("an apprentice's signature waits for a technician's", async () => {
		const { kim, lee, write, step } = await shopWithPeople();
		expect((await write(lee.tablet, "step", { step: "recipe/2" })).status).toBe(201);
		const signed = await write(lee.tablet, "sign-off", { step: "recipe/2" });
		expect(signed.body).toMatchObject({
			person: "Lee",
			account: lee.id,
			standing: { role: "apprentice", sort: "wiring", ability: "second" },
		});
		expect(await step("recipe/2")).toMatchObject({
			complete: false,
			missing: expect.stringContaining("sign alone"),
		});
		await write(kim.tablet, "sign-off", { step: "recipe/2" });
		expect(await step("recipe/2")).toMatchObject({ complete: true });
	});

	test("a critical step is refused to an apprentice until the owner opens it, and always takes two", async () => {
		const { owner, kim, lee, write, step } = await shopWithPeople();
		const name = "power/1";
		for (const kind of ["step", "sign-off"]) {
			const refused = await write(lee.tablet, kind, { step: name });
			expect([refused.status, refused.body.error]).toEqual([
				403,
				"Lee may not do steps of the sort first power yet",
			]);
		}
		await write(kim.tablet, "step", { step: name });
		await write(kim.tablet, "sign-off", { step: name });
		await write(kim.tablet, "sign-off", { step: name });
		expect(await step(name)).toMatchObject({
			needs: 2,
			complete: false,
			missing: "a second person must sign",
		});
		const ability = { sort: "first power", ability: "second" };
		await owner.ask("PUT", `/api/v1/people/${lee.id}/abilities`, ability);
		expect((await write(lee.tablet, "sign-off", { step: name })).status).toBe(201);
		expect(await step(name)).toMatchObject({ complete: true });
	});

	test("after enough steps under supervision, the matrix lets the apprentice sign such steps alone", async () => {
		const { owner, kim, lee, write, step } = await shopWithPeople();
		for (let n = 1; n <= 5; n += 1) {
			await write(lee.tablet, "step", { step: `wash harness ${n}` });
			await write(lee.tablet, "sign-off", { step: `wash harness ${n}` });
			await write(kim.tablet, "sign-off", { step: `wash harness ${n}` });
		}
		const { people } = (await owner.ask("GET", "/api/v1/people")).body;
		const cells = people.find((one: { name: string }) => one.name === "Lee").abilities;
		const cell = (sort: string) => cells.find((one: { sort: string }) => one.sort === sort);
		expect(cell("other")).toMatchObject({ ability: "alone", because: "practice", supervised: 5 });
		expect(cell("wiring")).toMatchObject({ ability: "second", because: "role", supervised: 0 });
		await write(lee.tablet, "step", { step: "wash harness 6" });
		await write(lee.tablet, "sign-off", { step: "wash harness 6" });
		expect(await step("wash harness 6")).toMatchObject({ complete: true });
	});

	test("nobody signs over a hold they knew of; an apprentice may hold but not lift", async () => {
		const { kim, lee, write, step } = await shopWithPeople();
		await write(kim.tablet, "step", { step: "recipe/3" });
		const hold = await write(lee.tablet, "hold", { step: "recipe/3", text: "wrong terminal" });
		const signing = await write(kim.tablet, "sign-off", { step: "recipe/3" });
		expect([signing.status, signing.body.error]).toEqual([409, "this is on hold: wrong terminal (Lee)"]);
		// Signed on a tablet that was away and had not seen the hold: it stays, and the clash shows.
		const away = { seen: hold.body.place - 1, device: "tablet-9", counter: 1 };
		expect((await write(kim.tablet, "sign-off", { step: "recipe/3" }, away)).status).toBe(201);
		expect(await step("recipe/3")).toMatchObject({ complete: false, missing: "on hold: wrong terminal" });
		const lift = { hold: hold.body.id, text: "right one came" };
		expect((await write(lee.tablet, "lift", lift)).body.error).toBe("an apprentice may not lift a hold");
		expect((await write(kim.tablet, "lift", { ...lift, hold: "nothing-here" })).status).toBe(404);
		expect((await write(kim.tablet, "lift", lift)).status).toBe(201);
		expect(await step("recipe/3")).toMatchObject({ complete: true });
	});

	test("an apprentice takes back what is their own only", async () => {
		const { kim, lee, write } = await shopWithPeople();
		const theirs = await write(kim.tablet, "note", { text: "theirs" });
		const own = await write(lee.tablet, "note", { text: "own" });
		const back = (of: string) => write(lee.tablet, "correction", { of, text: "mistaken" });
		expect((await back(theirs.body.id)).status).toBe(403);
		expect((await back(own.body.id)).status).toBe(201);
		expect((await write(lee.tablet, "acceptance", { by: "the customer", text: "as agreed" })).status).toBe(
			403,
		);
	});

	test("a finding is accepted by a technician, one that says stop by the owner, by an apprentice or guest never", async () => {
		const { owner, kim, lee, at, write, tablet } = await shopWithPeople();
		const accept = async (by: Tablet, severity: string, rule = "idle-fuse") => {
			const finding = { ...FOUND.finding, severity, rule };
			return (await write(by, "acceptance", { ...FOUND, finding, text: "the trailer needs it" })).status;
		};
		const guest = tablet();
		const link = await owner.ask("POST", `${at}/guests`, { name: "Customer" });
		await guest.ask("POST", "/api/v1/session/guest", { token: link.body.token });
		const all = [owner, kim.tablet, lee.tablet, guest];
		expect(await Promise.all(all.map((by) => accept(by, "warn")))).toEqual([201, 201, 403, 403]);
		expect(await Promise.all(all.map((by) => accept(by, "stop")))).toEqual([201, 403, 403, 403]);
		expect(await accept(owner, "warn", "no-such-rule")).toBe(422);
		const { acceptedFindings } = (await guest.ask("GET", `${at}/state`)).body;
		expect(acceptedFindings.map((one: { role: string }) => one.role).sort()).toEqual([
			...["owner", "owner", "technician"],
		]);
	});

	test("a correction is taken back by its writer or the owner; replaced tables by none", async () => {
		const { owner, kim, job, store, write } = await shopWithPeople();
		const note = await write(owner, "note", { text: "wrong car" });
		const back = (by: Tablet, of: string) => write(by, "correction", { of, text: "mistaken" });
		const first = await back(owner, note.body.id);
		expect((await back(kim.tablet, first.body.id)).status).toBe(403);
		expect((await back(owner, first.body.id)).status).toBe(201);
		const own = await back(kim.tablet, note.body.id);
		expect((await back(kim.tablet, own.body.id)).status).toBe(201);
		const replaced = await store.replaceTables(
			job,
			{ "x.csv": "" },
			{ id: "tables-1", person: "Ola" },
			() => {},
		);
		expect((await back(owner, replaced!.id)).status).toBe(422);
	});

	test("whoever is signed in is who wrote it, whatever is sent", async () => {
		const { kim, lee, write } = await shopWithPeople();
		const forged = await write(lee.tablet, "note", { text: "x" }, { person: "Kim" });
		expect(forged.body).toMatchObject({ person: "Lee", account: lee.id });
		const others = await write(lee.tablet, "note", { text: "x" }, { account: kim.id });
		expect([others.status, others.body.error]).toEqual([403, expect.stringContaining("someone else")]);
	});
});

describe("a tablet that was away", () => {
	const note = (n: number, more: object = {}) => ({
		...{ id: `tablet-1-000${n}`, kind: "note", body: { text: `note ${n}` }, device: "tablet-1", counter: n },
		...more,
	});

	test("sends its queue; sent again, whole or in part, all is stored once", async () => {
		const { kim, at } = await shopWithPeople();
		const send = (...entries: object[]) => kim.tablet.ask("POST", `${at}/queue`, { entries });
		const outcomes = async (...entries: object[]) =>
			(await send(...entries)).body.results.map((one: { outcome: string }) => one.outcome);
		expect(await outcomes(note(1), note(2))).toEqual(["added", "added"]);
		expect(await outcomes(note(1), note(2), note(3))).toEqual(["there", "there", "added"]);
		await Promise.all(Array.from({ length: 6 }, () => send(note(1), note(2), note(3), note(4))));
		const { entries, fault } = (await kim.tablet.ask("GET", `${at}/entries`)).body;
		expect(entries.map((entry: { counter: number }) => entry.counter)).toEqual([1, 2, 3, 4]);
		expect(fault).toBeNull();
	});

	test("what is refused is refused by itself, with what to do, and the rest is stored", async () => {
		const { lee, at } = await shopWithPeople();
		const entries = [
			note(1),
			note(2, { kind: "sign-off", body: { step: "power/1" } }),
			note(3, { kind: "bench", body: { part: "K9", good: true } }),
			note(4, { kind: "photo", body: { photo: "0".repeat(64) } }),
			note(5),
		];
		const { results } = (await lee.tablet.ask("POST", `${at}/queue`, { entries })).body;
		expect(results.map((one: { outcome: string }) => one.outcome)).toEqual([
			...["added", "refused", "refused", "refused", "added"],
		]);
		for (const one of results.slice(1, 4)) expect([one.error, one.toDo]).not.toContain("");
	});

	test("two away on the same step: both entries stay, and the clash shows until one looks", async () => {
		const { kim, lee, at, write, owner } = await shopWithPeople();
		const body = { step: "recipe/5" };
		const mine = { id: "tablet-1-step-5", kind: "step", body, device: "tablet-1", counter: 1, seen: 0 };
		const theirs = { id: "tablet-2-step-5", kind: "step", body, device: "tablet-2", counter: 1, seen: 0 };
		await kim.tablet.ask("POST", `${at}/queue`, { entries: [mine] });
		await lee.tablet.ask("POST", `${at}/queue`, { entries: [theirs] });
		const clashes = async () => (await owner.ask("GET", `${at}/state`)).body.clashes;
		expect(await clashes()).toEqual([
			{ step: "recipe/5", entries: [mine.id, theirs.id], people: ["Kim", "Lee"], settled: "" },
		]);
		const signed = await write(kim.tablet, "sign-off", body);
		expect((await clashes())[0].settled).toBe(signed.body.id);
	});
});
