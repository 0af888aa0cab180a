import { expect, test } from "vitest";
import { EngineClient, type Port } from "./client.js";
import type { EngineCall } from "./protocol.js";

/** A worker that answers when told to. */
class SlowPort implements Port {
	onmessage: Port["onmessage"] = null;
	onerror: Port["onerror"] = null;
	readonly calls: EngineCall[] = [];
	postMessage(message: unknown): void {
		this.calls.push(message as EngineCall);
	}
	answer(reply: object): void {
		this.onmessage?.({ data: { id: this.calls.at(-1)!.id, ...reply } } as MessageEvent);
	}
}

test("one call at a time, each gets its own answer", async () => {
	const port = new SlowPort();
	const client = new EngineClient(port);
	const [first, second] = [client.call("changes"), client.call("findings", "converted")];
	expect(port.calls.map(({ method }) => method)).toEqual(["changes"]);
	port.answer({ ok: true, value: ["a"] });
	expect(await first).toEqual(["a"]);
	port.answer({ ok: true, value: ["b"] });
	expect(await second).toEqual(["b"]);
	expect(port.calls.map(({ args }) => args)).toEqual([[], ["converted"]]);
});

test("what is no longer wanted is not sent; what the worker began is answered", async () => {
	const port = new SlowPort();
	const client = new EngineClient(port);
	const [running, waiting] = [new AbortController(), new AbortController()];
	const first = client.callWhileWanted(running.signal, "changes");
	const second = client.callWhileWanted(waiting.signal, "changes");
	const third = client.call("findings", "delivered");
	running.abort();
	waiting.abort();
	port.answer({ ok: true, value: 1 });
	expect(await first).toBe(1);
	await expect(second).rejects.toThrow("no longer asked");
	port.answer({ ok: true, value: 3 });
	expect(await third).toBe(3);
	expect(port.calls).toHaveLength(2);
});

test("a fault keeps its kind and its rows across the boundary", async () => {
	const port = new SlowPort();
	const opened = new EngineClient(port).call("open", {});
	const errors = [{ file: "wires.csv", row: 4, column: "size", problem: "p", wanted: "w" }];
	port.answer({ ok: false, fault: { kind: "tables", message: "m", errors } });
	await expect(opened).rejects.toMatchObject({ name: "EngineFault", kind: "tables", errors });
});

test("a worker that dies fails what runs and what waits", async () => {
	const port = new SlowPort();
	const client = new EngineClient(port);
	const calls = [client.call("changes"), client.call("changes")];
	port.onerror?.({ message: "no script" } as ErrorEvent);
	for (const call of calls) await expect(call).rejects.toThrow("no script");
});
