import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, onTestFinished, test } from "vitest";
import { SMALL_CAR } from "./terminal.test-helper.js";

const main = fileURLToPath(new URL("./main.ts", import.meta.url));

/** Starts the program as a process of its own. */
function started(words: readonly string[], environment: Readonly<Record<string, string>> = {}) {
	const child = spawn(process.execPath, ["--conditions=source", "--import", "tsx", main, ...words], {
		env: { ...process.env, ...environment },
	});
	const said = { out: "", err: "" };
	child.stdout.setEncoding("utf8").on("data", (text: string) => {
		said.out += text;
	});
	child.stderr.setEncoding("utf8").on("data", (text: string) => {
		said.err += text;
	});
	onTestFinished(() => void child.kill("SIGKILL"));
	const line = async () => {
		while (!said.out.includes("\n")) await once(child.stdout, "data");
		return said.out;
	};
	return { child, said, line, ended: once(child, "close") };
}

function temporaryFolder(): string {
	const folder = mkdtempSync(join(tmpdir(), "loomwright-"));
	onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
	return folder;
}

test("the exit code and both outputs are the process's own", async () => {
	const { said, ended } = started(["reading", SMALL_CAR, "CU.7", "CU.2", "--when", "nowhere", "--json"]);
	expect(await ended).toEqual([2, null]);
	expect(said.err).toMatch(/^this car has no condition 'nowhere'/);
	expect(JSON.parse(said.out).errors.length).toBe(1);
});

test("serve: one line with the address; told to stop, it ends well and leaves one database file", async () => {
	const data = temporaryFolder();
	const { child, said, line, ended } = started(["serve", SMALL_CAR, "--data", data], { PORT: "0" });
	const address = /^Loomwright is at (http:\/\/127\.0\.0\.1:\d+) /.exec(await line())![1]!;
	const { jobs } = (await (await fetch(`${address}/api/v1/jobs`)).json()) as { jobs: { title: string }[] };
	expect(jobs.map((job) => job.title)).toEqual(["A tiny car"]);
	child.kill("SIGTERM");
	expect(await ended).toEqual([0, null]);
	expect([said.out.split("\n").length, said.err]).toEqual([2, ""]);
	expect(readdirSync(data)).toEqual(["loomwright.db"]);
});

test("serve under npm: when the shell between is told to stop, the server stops too", async () => {
	const data = temporaryFolder();
	const command = `"${process.execPath}" --conditions=source --import tsx "${main}" serve "${SMALL_CAR}" --data "${data}" --port 0; :`;
	const shell = spawn("sh", ["-c", command], { env: { ...process.env, npm_lifecycle_event: "start" } });
	await once(shell.stdout, "data");
	expect(readdirSync(data).length).toBeGreaterThan(1);
	const ended = once(shell, "close");
	shell.kill("SIGTERM");
	// The outputs close only when the server, which shares them, has ended.
	await ended;
	expect(readdirSync(data)).toEqual(["loomwright.db"]);
});
