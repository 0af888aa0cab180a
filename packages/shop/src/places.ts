/** Where things lie, whether this runs from source or compiled. */
import { resolve } from "node:path";
import { fileURLToPath } from "node:url";

/** The repository; this file is packages/shop/src/places.ts or packages/shop/dist/places.js in it. */
const ROOT = new URL("../../../", import.meta.url);

/** Folder of the built tablet app. */
export const WEB_APP = fileURLToPath(new URL("packages/web/dist", ROOT));

/** Folder of the invented car that a new database starts with. */
export const DEMO_CAR = fileURLToPath(new URL("demo/main", ROOT));

/** The database: the PostgreSQL address where one is given, else the file in the data folder. */
export const databaseOf = ({ data, database }: { data: string; database?: string | undefined }): string =>
	database || resolve(data, "loomwright.db");

/** Folders of the code that computes: of the engine and of its linear algebra, as this runs, from source or compiled. */
export const ENGINE_CODE: readonly string[] = ["engine", "linalg"].map((name) =>
	fileURLToPath(new URL(`packages/${name}/${import.meta.url.endsWith(".ts") ? "src" : "dist"}`, ROOT)),
);
