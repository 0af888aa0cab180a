import { expect, onTestFinished, test } from "vitest";
import { JOB, smallServer } from "../server.test-helper.js";

/** Reads server-sent events until `count` of a name have come. */
async function listen(address: string) {
	const stop = new AbortController();
	onTestFinished(() => stop.abort());
	const response = await fetch(`${address}/api/v1/live`, {
		headers: { accept: "text/event-stream" },
		signal: stop.signal,
	});
	const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader();
	let text = "";
	const events = async (count: number) => {
		const found = () =>
			[...text.matchAll(/event: entry\n(?:id: .*\n)?data: (.*)\n/g)].map((one) => JSON.parse(one[1]!));
		while (found().length < count) {
			const { value, done } = await reader.read();
			if (done) break;
			text += value;
		}
		return found();
	};
	return { type: response.headers.get("content-type"), events, stop };
}

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
