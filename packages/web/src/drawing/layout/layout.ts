/** Lays a drawing out in a worker of its own, loaded with the first drawing. */
import ELK, { type ELK as Elk } from "elkjs/lib/elk-api.js";
import ElkWorker from "elkjs/lib/elk-worker.min.js?worker";
import type { Sheet } from "../sheet/types.js";
import { fromElk } from "./from-elk.js";
import { toElk } from "./to-elk.js";
import type { PlacedSheet } from "./types.js";

let elk: Elk | undefined;

/** @throws Error with the layout's own message, as a rejection */
export async function layOut(sheet: Sheet): Promise<PlacedSheet> {
	elk ??= new ELK({ workerFactory: () => new ElkWorker() });
	return fromElk(sheet, await elk.layout(toElk(sheet)));
}
