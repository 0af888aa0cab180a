import { mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { createServer } from "node:net";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { temporaryFolder, temporaryStore } from "../store/temporary.test-helper.js";
import { buildApp } from "./app.js";
import { JOB, SMALL_CAR, smallServer } from "./server.test-helper.js";
import { start } from "./start.js";

describe("starting", () => {
	test("on a port in use: says so and what to set", async () => {
		const { address } = await smallServer();
		const port = Number(new URL(address).port);
		const again = start({ port, host: "127.0.0.1", data: temporaryFolder(), folder: SMALL_CAR });
		await expect(again).rejects.toMatchObject({
			message: `port ${port} on 127.0.0.1 is in use by another program`,
			toDo: expect.stringContaining("PORT="),
		});
	});

	test("on an address this machine has not", async () => {
		const options = { port: 0, host: "192.0.2.1", data: temporaryFolder(), folder: SMALL_CAR };
		await expect(start(options)).rejects.toMatchObject({ toDo: expect.stringContaining("--host") });
	});

	test("with a certificate whose key is missing, or that is none", async () => {
		const data = temporaryFolder();
		const cert = join(data, "cert.pem");
		writeFileSync(cert, "no certificate");
		const options = { port: 0, host: "127.0.0.1", data, folder: SMALL_CAR, cert };
		await expect(start(options)).rejects.toMatchObject({ toDo: "Give both --cert and --key." });
		await expect(start({ ...options, key: join(data, "none.pem") })).rejects.toThrow("cannot be read");
		await expect(start({ ...options, key: cert })).rejects.toThrow("do not go together, or are not in PEM");
	});

	test("with a folder that is no car: nothing is stored", async () => {
		const data = temporaryFolder();
		const folder = temporaryFolder();
		const options = { port: 0, host: "127.0.0.1", data, folder };
		await expect(start(options)).rejects.toThrow("there are no tables in this folder");
		writeFileSync(join(folder, "parts.csv"), "part,kind\nECU,control unit\n");
		await expect(start(options)).rejects.toThrow("contacts.csv: the table is missing");
		const server = await start({ ...options, folder: SMALL_CAR });
		const jobs = await (await fetch(`${server.address}/api/v1/jobs`)).json();
		await server.close();
		expect(jobs).toMatchObject({ jobs: [{ title: "A tiny car" }] });
	});

	test("closing frees the port and leaves one database file", async () => {
		const server = await smallServer();
		const port = Number(new URL(server.address).port);
		await server.close();
		expect(readdirSync(server.data)).toEqual(["loomwright.db"]);
		await new Promise<void>((resolve, reject) => {
			const taken = createServer().once("error", reject);
			taken.listen(port, "127.0.0.1", () => taken.close(() => resolve()));
		});
	});
});

describe("answers of any kind", () => {
	test("the API is described as OpenAPI 3.1, every address of it", async () => {
		const { ask } = await smallServer();
		const { body } = await ask("GET", "/api/v1/openapi.json");
		expect(body.openapi).toMatch(/^3\.1\./);
		expect(Object.keys(body.paths).sort()).toEqual([
			"/api/v1/jobs",
			"/api/v1/jobs/{job}",
			"/api/v1/jobs/{job}/changes",
			"/api/v1/jobs/{job}/entries",
			"/api/v1/jobs/{job}/find",
			"/api/v1/jobs/{job}/findings",
			"/api/v1/jobs/{job}/guests",
			"/api/v1/jobs/{job}/guests/{link}",
			"/api/v1/jobs/{job}/photos",
			"/api/v1/jobs/{job}/photos/{photo}",
			"/api/v1/jobs/{job}/plan",
			"/api/v1/jobs/{job}/power",
			"/api/v1/jobs/{job}/practice",
			"/api/v1/jobs/{job}/prove",
			"/api/v1/jobs/{job}/queue",
			"/api/v1/jobs/{job}/reading",
			"/api/v1/jobs/{job}/recipe/versions",
			"/api/v1/jobs/{job}/recipe/versions/{version}",
			"/api/v1/jobs/{job}/recipe/versions/{version}/changes",
			"/api/v1/jobs/{job}/sizes",
			"/api/v1/jobs/{job}/state",
			"/api/v1/jobs/{job}/tables",
			"/api/v1/jobs/{job}/tables/trial",
			"/api/v1/jobs/{job}/tables/{file}",
			"/api/v1/jobs/{job}/transfer",
			"/api/v1/jobs/{job}/what-if",
			"/api/v1/live",
			"/api/v1/people",
			"/api/v1/people/{person}",
			"/api/v1/people/{person}/abilities",
			"/api/v1/repairs",
			"/api/v1/session",
			"/api/v1/session/guest",
			"/api/v1/setup",
		]);
		const find = body.paths["/api/v1/jobs/{job}/find"].post.responses;
		expect(find["200"].content["application/json"].schema.properties).toHaveProperty("faults");
		expect(find["4XX"].content["application/json"].schema.properties).toHaveProperty("toDo");
	});

	test("nothing there, and JSON that is none: one shape", async () => {
		const server = await smallServer();
		const nowhere = await server.ask("GET", "/api/v1/nowhere");
		expect([nowhere.status, Object.keys(nowhere.body)]).toEqual([404, ["error", "toDo", "errors"]]);
		const headers = { "content-type": "application/json" };
		const broken = await fetch(`${server.address}${JOB}/find`, { method: "POST", headers, body: "{" });
		expect([broken.status, Object.keys((await broken.json()) as object)]).toEqual([
			400,
			["error", "toDo", "errors"],
		]);
	});

	test("a failure of our own is told where the server was started, not to the asker", async () => {
		const { store } = await temporaryStore();
		const told: unknown[] = [];
		const app = await buildApp({ store, web: temporaryFolder(), report: (error) => told.push(error) });
		store.jobs = () => Promise.reject(new Error("disk on fire"));
		const { statusCode, body } = await app.inject("/api/v1/jobs");
		await app.close();
		expect(statusCode).toBe(500);
		expect(body).not.toContain("fire");
		expect(told).toEqual([expect.objectContaining({ message: "disk on fire" })]);
	});

	test("its own scripts and workers only; nothing that a plain address cannot keep", async () => {
		const { headers } = await (await smallServer()).ask("GET", "/api/v1/jobs");
		const policy = headers.get("content-security-policy");
		expect(policy).toContain("script-src 'self';");
		expect(policy).toContain("worker-src 'self' blob:");
		expect(policy).not.toContain("upgrade-insecure-requests");
		expect(headers.get("strict-transport-security")).toBeNull();
	});
});

describe("the tablet app", () => {
	async function appIn(files: Record<string, string>) {
		const web = temporaryFolder();
		mkdirSync(join(web, "assets"));
		for (const [name, text] of Object.entries(files)) writeFileSync(join(web, name), text);
		const { store } = await temporaryStore();
		const app = await buildApp({ store, web, report: () => {} });
		const page = { accept: "text/html,*/*" };
		const get = (url: string, headers: Record<string, string> = page) => app.inject({ url, headers });
		return { get, close: () => app.close() };
	}

	test("its files, and its first page for every address of its own", async () => {
		const { get, close } = await appIn({ "index.html": "<p>app</p>", "assets/a-1f.js": "let a" });
		for (const path of ["/", "/jobs/main/find", "/index.html"]) {
			const { statusCode, body, headers } = await get(path);
			expect([path, statusCode, body, headers["cache-control"]]).toEqual([
				path,
				200,
				"<p>app</p>",
				"no-cache",
			]);
		}
		const script = await get("/assets/a-1f.js", {});
		expect([script.body, script.headers["cache-control"]]).toEqual([
			"let a",
			"public, max-age=31536000, immutable",
		]);
		expect((await get("/assets/gone.js")).statusCode).toBe(404);
		expect((await get("/picture.png", { accept: "image/png" })).statusCode).toBe(404);
		expect((await get("/..%2f..%2fpackage.json")).body).not.toContain('loomwright"');
		await close();
	});

	test("not built: says how", async () => {
		const { get, close } = await appIn({});
		const { statusCode, body } = await get("/");
		expect([statusCode, body]).toEqual([503, expect.stringContaining("npm run build")]);
		await close();
	});
});
