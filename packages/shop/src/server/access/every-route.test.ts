/** Every route and every role: who is let in. A new route without a line here fails the first test. */
import { expect, test } from "vitest";
import { type ShopOfTest, shopOfTest, type Tablet } from "./tablet.test-helper.js";

const ROLES = [
	"bench",
	"owner",
	"technician",
	"apprentice",
	"guest",
	"guest of another job",
	"nobody",
] as const;
type Name = (typeof ROLES)[number];

const ALL = [...ROLES];
const WORKERS: Name[] = ["bench", "owner", "technician", "apprentice"];
const LOOKERS: Name[] = [...WORKERS, "guest"];
const TRUSTED: Name[] = ["bench", "owner", "technician"];
const OWNER: Name[] = ["owner"];

const ROUTES: readonly (readonly [route: string, allowed: readonly Name[]])[] = [
	["GET /session", ALL],
	["POST /session", ALL],
	["POST /session/guest", ALL],
	["POST /setup", ALL],
	["DELETE /session", ALL],
	["GET /people", WORKERS],
	["POST /people", OWNER],
	["PATCH /people/:person", OWNER],
	["PUT /people/:person/abilities", OWNER],
	["GET /repairs", WORKERS],
	["GET /jobs", [...LOOKERS, "guest of another job"]],
	["GET /jobs/:job", LOOKERS],
	["GET /jobs/:job/practice", WORKERS],
	["GET /jobs/:job/guests", TRUSTED],
	["POST /jobs/:job/guests", TRUSTED],
	["DELETE /jobs/:job/guests/:link", TRUSTED],
	["PUT /jobs/:job/tables", TRUSTED],
	["PUT /jobs/:job/tables/:file", TRUSTED],
	["POST /jobs/:job/tables/trial", WORKERS],
	["GET /jobs/:job/entries", LOOKERS],
	["POST /jobs/:job/entries", WORKERS],
	["POST /jobs/:job/queue", WORKERS],
	["POST /jobs/:job/photos", WORKERS],
	["GET /jobs/:job/photos/:photo", LOOKERS],
	["GET /jobs/:job/state", LOOKERS],
	["GET /live", [...LOOKERS, "guest of another job"]],
	["GET /jobs/:job/changes", LOOKERS],
	["GET /jobs/:job/findings", LOOKERS],
	["POST /jobs/:job/reading", WORKERS],
	["POST /jobs/:job/find", WORKERS],
	["POST /jobs/:job/prove", WORKERS],
	["GET /jobs/:job/power", LOOKERS],
	["POST /jobs/:job/plan", WORKERS],
	["GET /jobs/:job/sizes", LOOKERS],
	["POST /jobs/:job/what-if", WORKERS],
	["POST /jobs/:job/transfer", WORKERS],
	["GET /jobs/:job/recipe/versions", LOOKERS],
	["GET /jobs/:job/recipe/versions/:version", LOOKERS],
	["GET /jobs/:job/recipe/versions/:version/changes", LOOKERS],
	["GET /openapi.json", ALL],
];

/** Every route of the API, as the server itself lists them. */
async function listed(shop: ShopOfTest): Promise<string[]> {
	const { paths } = (await shop.tablet().ask("GET", "/api/v1/openapi.json")).body;
	const own = Object.entries(paths as Record<string, object>).flatMap(([path, methods]) =>
		Object.keys(methods).map(
			(method) => `${method.toUpperCase()} ${path.replace("/api/v1", "").replaceAll(/\{(\w+)\}/g, ":$1")}`,
		),
	);
	return [...own, "GET /openapi.json"];
}

async function tabletOf(role: Name): Promise<{ tablet: Tablet; job: string }> {
	const shop = await shopOfTest();
	const { job } = shop;
	if (role === "bench") return { tablet: shop.tablet(), job };
	const owner = await shop.owner();
	if (role === "owner") return { tablet: owner, job };
	if (role === "nobody") return { tablet: shop.tablet(), job };
	if (role === "technician" || role === "apprentice")
		return { tablet: (await shop.person(owner, "Kim", role)).tablet, job };
	const other = await shop.store.addJob({ title: "Another", source: "", tables: {}, practice: {} });
	const of = role === "guest" ? job : other.id;
	const link = await owner.ask("POST", `/api/v1/jobs/${of}/guests`, { name: "Customer" });
	const tablet = shop.tablet();
	await tablet.ask("POST", "/api/v1/session/guest", { token: link.body.token });
	return { tablet, job };
}

test("the table has every route", async () => {
	const routes = await listed(await shopOfTest());
	expect(ROUTES.map(([route]) => route).sort()).toEqual(routes.sort());
});

test.each(ROLES)("as %s", async (role) => {
	const { tablet, job } = await tabletOf(role);
	const wrong: string[] = [];
	const about = role === "nobody" ? 401 : 403;
	for (const [route, allowed] of ROUTES) {
		// These change who asks, or go on for ever: below.
		if (["DELETE /session", "POST /setup", "GET /live"].includes(route)) continue;
		const [method, path] = route.split(" ") as [string, string];
		const url = `/api/v1${path}`
			.replace(":job", job)
			.replace(":photo", "0".repeat(64))
			.replace(":file", "wires.csv")
			.replace(/:\w+/, "nobody");
		const { status } = await tablet.ask(method, url, method === "GET" ? undefined : {});
		const refused = status === 401 || status === 403;
		// Signing in with nothing is refused as such, not for want of rights.
		const signsIn = route.startsWith("POST /session");
		if (signsIn ? status !== 400 : refused === allowed.includes(role)) wrong.push(`${route}: ${status}`);
		if (refused && !signsIn && status !== about) wrong.push(`${route}: ${status}, not ${about}`);
	}
	expect(wrong).toEqual([]);
	const setUp = await tablet.ask("POST", "/api/v1/setup", {});
	expect(setUp.status).toBe(400);
	expect((await tablet.ask("DELETE", "/api/v1/session")).status).toBe(200);
});
