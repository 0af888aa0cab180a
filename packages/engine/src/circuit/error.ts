/** Raised when a network cannot be solved to the stated accuracy, or does not settle. */
export class CircuitError extends Error {
	constructor(
		message: string,
		/** Names of the points or parts concerned. */
		readonly where: readonly string[],
	) {
		super(message);
		this.name = "CircuitError";
	}
}
