/** The browser's own database: what this tablet wrote and has not yet sent, and what it last had from the server. */
const NAME = "loomwright-tablet";

export const WAITING = "waiting";
export const TABLET = "tablet";
/** Entries of histories, by job and place. */
export const ENTRIES = "entries";
/** Pictures by job and photo, and beside them their sizes: summing up must not load every picture. */
export const PHOTOS = "photos";
export const PHOTO_SIZES = "photo-sizes";

/** The stores that came with each version. */
const VERSIONS: readonly ((database: IDBDatabase) => void)[] = [
	(database) => {
		database.createObjectStore(WAITING, { keyPath: "order", autoIncrement: true });
		database.createObjectStore(TABLET);
	},
	(database) => {
		database.createObjectStore(ENTRIES);
		database.createObjectStore(PHOTOS);
		database.createObjectStore(PHOTO_SIZES, { keyPath: ["job", "photo"] });
	},
];

let opened: Promise<IDBDatabase> | undefined;

export function database(): Promise<IDBDatabase> {
	opened ??= new Promise<IDBDatabase>((resolve, reject) => {
		const asked = indexedDB.open(NAME, VERSIONS.length);
		asked.onupgradeneeded = ({ oldVersion }) => {
			for (const add of VERSIONS.slice(oldVersion)) add(asked.result);
		};
		asked.onsuccess = () => {
			// A newer page of the app in another tab must not wait for this one.
			asked.result.onversionchange = () => asked.result.close();
			resolve(asked.result);
		};
		asked.onerror = () => reject(new Error("this browser keeps nothing: leave its private mode"));
		asked.onblocked = () => reject(new Error("close the app's other tabs: they hold what this tablet keeps"));
	});
	// Asked again next time, perhaps with more luck.
	opened.catch(() => {
		opened = undefined;
	});
	return opened;
}

export const answer = <T>(request: IDBRequest<T>): Promise<T> =>
	new Promise((resolve, reject) => {
		request.onsuccess = () => resolve(request.result);
		request.onerror = () => reject(request.error);
	});

export const finished = (transaction: IDBTransaction): Promise<void> =>
	new Promise((resolve, reject) => {
		transaction.oncomplete = () => resolve();
		transaction.onabort = () => reject(transaction.error ?? new Error("the tablet's storage is full"));
	});
