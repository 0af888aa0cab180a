/** The demo cars, read from their folders, for tests. */
import { readdirSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { type Car, openCar } from "../car.js";

type Demo = "main" | "small" | "other-market";

export function demoFiles(name: Demo): Record<string, string> {
	const folder = fileURLToPath(new URL(`../../../../demo/${name}/`, import.meta.url));
	const files = readdirSync(folder).filter((file) => file.endsWith(".csv"));
	return Object.fromEntries(files.map((file) => [file, readFileSync(folder + file, "utf8")]));
}

const opened = new Map<string, Car>();

export function demoCar(name: Demo): Car {
	let car = opened.get(name);
	if (car === undefined) {
		car = openCar(demoFiles(name));
		opened.set(name, car);
	}
	return car;
}
