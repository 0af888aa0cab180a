import { readdirSync, readFileSync } from "node:fs";

/** The tables of one of the demo cars, file name to text. */
export function demoFiles(car: "small" | "main"): Record<string, string> {
	const folder = new URL(`../demo/${car}/`, import.meta.url);
	const names = readdirSync(folder).filter((name) => name.endsWith(".csv"));
	return Object.fromEntries(names.map((name) => [name, readFileSync(new URL(name, folder), "utf8")]));
}
