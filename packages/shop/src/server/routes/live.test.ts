import { expect, test } from "vitest";
import { JOB, smallServer } from "../server.test-helper.js";
import { listen } from "./listen.test-helper.js";

test("what one tablet enters every other hears at once; the server still closes well", async () => {
	const server = await smallServer();
	const [a, b] = [await listen(server.address), await listen(server.address)];
	expect(a.type).toContain("text/event-stream");
	const note = (text: string) =>
		server.ask("POST", `${JOB}/entries`, { kind: "note", body: { text }, person: "Kim" });
	await note("one");
	await note("two");
	for (const tablet of [a, b])
		expect(await tablet.events(2)).toEqual([
			{ job: "a-tiny-car", place: 1 },
			{ job: "a-tiny-car", place: 2 },
		]);
	a.stop.abort();
	await note("three");
	expect((await b.events(3)).length).toBe(3);
	await server.close();
});
