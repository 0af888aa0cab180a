/**
 * The prove sheet kept on the tablet, since computing it takes seconds. It is good for the same tables and the same
 * build of the app alone. Where the browser keeps nothing, it is computed each time.
 */
import type { ProveSheet } from "@loomwright/engine";

export interface KeptSheet {
	/** Undefined where none is kept for these tables. */
	read(): Promise<ProveSheet | undefined>;
	write(sheet: ProveSheet): Promise<void>;
}

type Tables = Readonly<Record<string, string>>;

interface Kept {
	/** Address of this script: it holds a hash of the build. */
	readonly build: string;
	readonly tables: Tables;
	readonly sheet: ProveSheet;
}

const DATABASE = "loomwright-prove";
const STORE = "sheets";
/** Sheets of so many cars; the oldest gives way. */
const MOST = 8;

const BUILD = import.meta.url;

export function keptSheet(tables: Tables): KeptSheet {
	return {
		async read() {
			const all = await within("readonly", (store) => store.getAll() as IDBRequest<Kept[]>);
			return all?.find((kept) => kept.build === BUILD && sameTables(kept.tables, tables))?.sheet;
		},
		async write(sheet) {
			const kept: Kept = { build: BUILD, tables, sheet };
			await within("readwrite", (store) => store.add(kept));
			const keys = (await within("readonly", (store) => store.getAllKeys())) ?? [];
			for (const key of keys.slice(0, -MOST)) await within("readwrite", (store) => store.delete(key));
		},
	};
}

const sameTables = (one: Tables, other: Tables): boolean => {
	const names = Object.keys(one);
	return names.length === Object.keys(other).length && names.every((name) => one[name] === other[name]);
};

/** One step in the store; undefined where the browser keeps nothing. */
async function within<T>(
	mode: IDBTransactionMode,
	ask: (store: IDBObjectStore) => IDBRequest<T>,
): Promise<T | undefined> {
	try {
		const opening = indexedDB.open(DATABASE, 1);
		opening.onupgradeneeded = () => opening.result.createObjectStore(STORE, { autoIncrement: true });
		const database = await answered(opening);
		try {
			return await answered(ask(database.transaction(STORE, mode).objectStore(STORE)));
		} finally {
			database.close();
		}
	} catch {
		return undefined;
	}
}

const answered = <T>(request: IDBRequest<T>): Promise<T> =>
	new Promise((resolve, reject) => {
		request.onsuccess = () => resolve(request.result);
		request.onerror = () => reject(request.error);
	});
