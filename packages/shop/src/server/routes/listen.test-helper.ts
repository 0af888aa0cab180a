import { onTestFinished } from "vitest";

/** Reads server-sent events until `count` of a name have come. */
export async function listen(address: string) {
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
	/** Reads until the server ends the stream. */
	const toEnd = async () => {
		while (!(await reader.read()).done);
	};
	return { type: response.headers.get("content-type"), events, toEnd, stop };
}
