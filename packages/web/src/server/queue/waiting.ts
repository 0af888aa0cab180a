/** What this tablet wrote and has not yet sent, kept so that a reload or a dead battery loses nothing. */
import { answer, database, finished, TABLET, WAITING } from "../kept/database.js";
import type { NewEntry, Waiting } from "../types.js";

interface Tablet {
	readonly device: string;
	readonly counter: number;
}

/** Keeps an entry, with this tablet's name and its next number. On the disk when it returns. */
export async function keep(
	waiting: Omit<Waiting, "order" | "entry">,
	entry: Omit<NewEntry, "device" | "counter">,
	newDevice: string,
): Promise<void> {
	const transaction = (await database()).transaction([WAITING, TABLET], "readwrite", {
		durability: "strict",
	});
	const done = finished(transaction);
	const tablets = transaction.objectStore(TABLET);
	const known = (await answer(tablets.get("self"))) as Tablet | undefined;
	const tablet: Tablet = { device: known?.device ?? newDevice, counter: (known?.counter ?? 0) + 1 };
	tablets.put(tablet, "self");
	transaction.objectStore(WAITING).add({ ...waiting, entry: { ...entry, ...tablet } });
	await done;
}

/** Everything kept, in the order it was written. */
export async function kept(): Promise<Waiting[]> {
	const transaction = (await database()).transaction(WAITING, "readonly");
	return answer(transaction.objectStore(WAITING).getAll()) as Promise<Waiting[]>;
}

export async function change(waiting: Waiting): Promise<void> {
	const transaction = (await database()).transaction(WAITING, "readwrite");
	const done = finished(transaction);
	transaction.objectStore(WAITING).put(waiting);
	await done;
}

export async function forget(order: number): Promise<void> {
	const transaction = (await database()).transaction(WAITING, "readwrite");
	const done = finished(transaction);
	transaction.objectStore(WAITING).delete(order);
	await done;
}
