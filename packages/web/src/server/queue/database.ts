/** What this tablet wrote and has not yet sent, kept in the browser's own database so that a reload or a dead battery loses nothing. */
import type { NewEntry, Waiting } from "../types.js";

const NAME = "loomwright-tablet";
const WAITING = "waiting";
const TABLET = "tablet";

let opened: Promise<IDBDatabase> | undefined;

function database(): Promise<IDBDatabase> {
	opened ??= new Promise<IDBDatabase>((resolve, reject) => {
		const asked = indexedDB.open(NAME, 1);
		asked.onupgradeneeded = () => {
			asked.result.createObjectStore(WAITING, { keyPath: "order", autoIncrement: true });
			asked.result.createObjectStore(TABLET);
		};
		asked.onsuccess = () => resolve(asked.result);
		asked.onerror = () => reject(new Error("this browser keeps nothing: leave its private mode"));
	});
	// Asked again next time, perhaps with more luck.
	opened.catch(() => {
		opened = undefined;
	});
	return opened;
}

const answer = <T>(request: IDBRequest<T>): Promise<T> =>
	new Promise((resolve, reject) => {
		request.onsuccess = () => resolve(request.result);
		request.onerror = () => reject(request.error);
	});

const finished = (transaction: IDBTransaction): Promise<void> =>
	new Promise((resolve, reject) => {
		transaction.oncomplete = () => resolve();
		transaction.onabort = () => reject(transaction.error ?? new Error("the tablet's storage is full"));
	});

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
