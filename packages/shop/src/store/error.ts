/** The store cannot do what was asked: what is wrong, and what to do. */
export class StoreError extends Error {
	override readonly name = "StoreError";

	constructor(
		message: string,
		readonly toDo: string,
		options?: ErrorOptions,
	) {
		super(message, options);
	}
}
