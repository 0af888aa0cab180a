/** The engine's worker: takes a call, answers it. */
import { faultData } from "./fault-data.js";
import type { EngineCall, EngineReply, MethodName } from "./protocol.js";
import { createEngine } from "./service.js";

const engine = createEngine();
const methods = engine as unknown as Record<MethodName, (...args: readonly unknown[]) => unknown>;

self.onmessage = ({ data }: MessageEvent<EngineCall>) => {
	self.postMessage(answer(data));
};

function answer({ id, method, args }: EngineCall): EngineReply {
	try {
		return { id, ok: true, value: methods[method](...args) };
	} catch (error) {
		return { id, ok: false, fault: faultData(error) };
	}
}
