import { describe, expect, test } from "vitest";
import { temporaryFolder } from "../../store/temporary.test-helper.js";
import { SMALL_CAR } from "../server.test-helper.js";
import { start } from "../start.js";
import { COOKIE } from "./guard.js";
import { OWNER_PIN, PIN, shopOfTest } from "./tablet.test-helper.js";

const session = "/api/v1/session";

describe("a machine without an owner", () => {
	test("serves whoever sits at it, and nobody else", async () => {
		const { app, tablet } = await shopOfTest();
		expect((await tablet().ask("GET", session)).body).toEqual({
			setUp: false,
			who: { role: "bench", name: "", account: "", job: "" },
			csrf: "",
			people: [],
		});
		const elsewhere = await app.inject({ url: session, headers: { host: "shop.example:8080" } });
		expect([elsewhere.statusCode, elsewhere.json().toDo]).toEqual([
			403,
			expect.stringContaining("127.0.0.1"),
		]);
	});

	test("is not served on a network: says what to do first", async () => {
		const options = { port: 0, host: "0.0.0.0", data: temporaryFolder(), folder: SMALL_CAR };
		await expect(start(options)).rejects.toMatchObject({
			message: "the shop has no owner yet, so it is not served on 0.0.0.0",
			toDo: expect.stringContaining("set up the owner"),
		});
	});

	test("once it has one, it is served, and nothing is told without signing in", async () => {
		const data = temporaryFolder();
		const first = await start({ port: 0, host: "127.0.0.1", data, folder: SMALL_CAR });
		const setUp = await fetch(`${first.address}/api/v1/setup`, {
			method: "POST",
			headers: { "content-type": "application/json" },
			body: JSON.stringify({ name: "Ola", pin: OWNER_PIN }),
		});
		expect(setUp.headers.get("set-cookie")).toMatch(/HttpOnly; SameSite=Strict$/);
		await first.close();
		const server = await start({ port: 0, host: "0.0.0.0", data });
		const { port } = new URL(server.address);
		const jobs = await fetch(`http://127.0.0.1:${port}/api/v1/jobs`);
		await server.close();
		expect(jobs.status).toBe(401);
	});

	test("takes one owner, once", async () => {
		const shop = await shopOfTest();
		const owner = await shop.owner();
		expect((await owner.ask("GET", session)).body.who).toMatchObject({ role: "owner", name: "Ola" });
		const again = await shop.tablet().ask("POST", "/api/v1/setup", { name: "Eve", pin: OWNER_PIN });
		expect(again.status).toBe(409);
	});
});

describe("signing in", () => {
	test("by name and PIN, quick switch, and out", async () => {
		const shop = await shopOfTest();
		const owner = await shop.owner();
		const { id, tablet } = await shop.person(owner, "Kim", "technician");
		expect((await tablet.ask("GET", session)).body.who).toEqual({
			role: "technician",
			name: "Kim",
			account: id,
			job: "",
		});
		const ola = (await tablet.ask("GET", session)).body.people.find(
			(one: { name: string }) => one.name === "Ola",
		);
		const before = tablet.cookie;
		expect((await tablet.signIn(ola.id, OWNER_PIN)).status).toBe(200);
		expect((await tablet.ask("GET", session)).body.who.name).toBe("Ola");
		// Whoever was signed in before the switch no longer is.
		const old = await shop.app.inject({ url: "/api/v1/jobs", headers: { cookie: `${COOKIE}=${before}` } });
		expect(old.statusCode).toBe(401);
		await tablet.ask("DELETE", session);
		expect((await tablet.ask("GET", "/api/v1/jobs")).status).toBe(401);
	});

	test("the PIN is kept as Argon2id, and no answer has it", async () => {
		const shop = await shopOfTest();
		const owner = await shop.owner();
		await shop.person(owner, "Kim", "technician");
		const pins = await shop.store.read((db) => db.selectFrom("person").select("pin").execute());
		for (const { pin } of pins) expect(pin).toMatch(/^\$argon2id\$v=19\$m=19456,t=2,p=1\$/);
		expect(JSON.stringify((await owner.ask("GET", "/api/v1/people")).body)).not.toContain("argon2");
	});

	test("wrong PINs: the same words for a wrong name, then longer and longer waits, also for the right PIN", async () => {
		const shop = await shopOfTest();
		const owner = await shop.owner();
		const { id } = await shop.person(owner, "Kim", "technician");
		const tablet = shop.tablet();
		const unknown = await tablet.ask("POST", session, { person: "nobody", pin: PIN });
		// All at once gains nothing.
		const wrong = await Promise.all(
			Array.from({ length: 8 }, () => tablet.ask("POST", session, { person: id, pin: "000001" })),
		);
		expect(wrong.filter(({ status }) => status === 401).length).toBe(5);
		expect(wrong[0]?.body).toEqual(unknown.body);
		const right = await tablet.signIn(id);
		expect(right).toMatchObject({ status: 429, body: { toDo: expect.stringMatching(/^Wait \d+ seconds/) } });
		await owner.ask("PATCH", `/api/v1/people/${id}`, { pin: "481516" });
		expect((await tablet.signIn(id, "481516")).status).toBe(200);
	});

	test("many attempts from one address are slowed, whatever the name", async () => {
		const shop = await shopOfTest();
		await shop.owner();
		const answers = [];
		for (let n = 0; n < 32; n += 1)
			answers.push(await shop.tablet().ask("POST", session, { person: `p${n}`, pin: "1" }));
		expect(answers.at(-1)).toMatchObject({
			status: 429,
			body: { error: "too many attempts from this address" },
		});
	});

	test.each(["12345", "111111", "123456", "abcdef", "1234567890123"])("%s is no PIN", async (pin) => {
		const shop = await shopOfTest();
		expect((await shop.tablet().ask("POST", "/api/v1/setup", { name: "Ola", pin })).status).toBe(400);
	});

	test("a person who left can no longer sign in, and is signed out; the last owner stays", async () => {
		const shop = await shopOfTest();
		const owner = await shop.owner();
		const { id, tablet } = await shop.person(owner, "Kim", "technician");
		await owner.ask("PATCH", `/api/v1/people/${id}`, { active: false });
		expect((await tablet.ask("GET", "/api/v1/jobs")).status).toBe(401);
		expect((await shop.tablet().signIn(id)).status).toBe(401);
		const own = (await owner.ask("GET", session)).body.who.account;
		const leave = await owner.ask("PATCH", `/api/v1/people/${own}`, { active: false });
		expect([leave.status, leave.body.error]).toEqual([409, "the shop would be left without an owner"]);
		expect((await owner.ask("GET", "/api/v1/people")).status).toBe(200);
	});
});

describe("requests that change something", () => {
	test("need the header only this server's pages know", async () => {
		const shop = await shopOfTest();
		const owner = await shop.owner();
		owner.csrf = "";
		const post = await owner.ask("POST", `/api/v1/jobs/${shop.job}/entries`, {
			kind: "note",
			body: { text: "x" },
		});
		expect([post.status, post.body.error]).toEqual([403, expect.stringContaining("x-loomwright-csrf")]);
		expect((await owner.ask("GET", "/api/v1/jobs")).status).toBe(200);
	});

	test("from a page of another address are refused, also without an owner", async () => {
		const { app, job } = await shopOfTest();
		const post = (origin: string) =>
			app.inject({
				method: "POST",
				url: `/api/v1/jobs/${job}/entries`,
				headers: { origin, host: "127.0.0.1:8080" },
				payload: { kind: "note", body: { text: "x" }, person: "Kim" },
			});
		expect((await post("http://evil.example")).statusCode).toBe(403);
		expect((await post("null")).statusCode).toBe(403);
		expect((await post("http://127.0.0.1:8080")).statusCode).toBe(201);
	});
});

test("a guest's link opens one job, and no more when it is ended", async () => {
	const shop = await shopOfTest();
	const owner = await shop.owner();
	const made = await owner.ask("POST", `/api/v1/jobs/${shop.job}/guests`, { name: "The customer" });
	expect(made.status).toBe(201);
	const guest = shop.tablet();
	const opened = await guest.ask("POST", "/api/v1/session/guest", { token: made.body.token });
	expect(opened.body).toMatchObject({ who: { role: "guest", job: shop.job }, people: [] });
	expect((await guest.ask("GET", `/api/v1/jobs/${shop.job}/entries`)).status).toBe(200);
	expect(JSON.stringify((await owner.ask("GET", `/api/v1/jobs/${shop.job}/guests`)).body)).not.toContain(
		made.body.token,
	);
	await owner.ask("DELETE", `/api/v1/jobs/${shop.job}/guests/${made.body.id}`);
	expect((await guest.ask("GET", `/api/v1/jobs/${shop.job}/entries`)).status).toBe(401);
	const again = await shop.tablet().ask("POST", "/api/v1/session/guest", { token: made.body.token });
	expect(again.status).toBe(401);
});

test("a guest's link ends by itself at the end it was given, which is within 90 days", async () => {
	// The shop's clock goes on by a second each time it is asked.
	const shop = await shopOfTest();
	const owner = await shop.owner();
	const at = `/api/v1/jobs/${shop.job}/guests`;
	const make = (end: object) => owner.ask("POST", at, { name: "The customer", ...end });
	for (const ends of ["2030-01-01T08:00:00Z", "2031-01-01T08:00:00Z"])
		expect((await make({ ends })).status).toBe(422);
	expect((await make({ ends: "2030-01-02T08:00:00Z", days: 3 })).status).toBe(400);
	const made = await make({ ends: "2030-01-01T08:01:30Z" });
	expect(made.body.ends).toBe("2030-01-01T08:01:30.000Z");
	const guest = shop.tablet();
	await guest.ask("POST", "/api/v1/session/guest", { token: made.body.token });
	const look = async () => (await guest.ask("GET", `/api/v1/jobs/${shop.job}/state`)).status;
	expect(await look()).toBe(200);
	while (shop.store.now() < new Date("2030-01-01T08:01:30Z"));
	expect(await look()).toBe(401);
});
