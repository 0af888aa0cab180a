/** One cold run of proving the demo car. Times leave out Node's own start. */
import { fileURLToPath } from "node:url";
import { openCar, powerUp, proveSheet } from "@loomwright/engine";
import { readFolder } from "@loomwright/shop";

const folder = fileURLToPath(new URL("../../demo/main/", import.meta.url));

/** Seconds from the first line of the work. */
export interface ProveRun {
	readonly sheet: number;
	readonly stages: number;
}

export function prove(): ProveRun {
	const car = openCar(readFolder(folder).tables);
	const began = performance.now();
	proveSheet(car);
	const sheet = (performance.now() - began) / 1000;
	powerUp(car);
	return { sheet, stages: (performance.now() - began) / 1000 - sheet };
}
