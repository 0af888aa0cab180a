/** An error of the engine as the page sees it. Apart from `fault-data.ts`, so that the page loads no engine code. */
import type { TableError } from "@loomwright/engine";
import type { EngineFaultData, FaultKind } from "./protocol.js";

export class EngineFault extends Error {
	override readonly name = "EngineFault";
	readonly kind: FaultKind;
	readonly errors: readonly TableError[];

	constructor(data: EngineFaultData) {
		super(data.message);
		this.kind = data.kind;
		this.errors = data.errors;
	}
}
