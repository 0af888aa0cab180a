/** A version of the recipe in words. */
import type { RecipeVersion } from "../server/choosing.js";
import { NOBODY } from "../server/person.js";

/** `Recipe version 3, by Kim, 2030-05-01 10:12`. */
export function versionWords(version: RecipeVersion): string {
	return `Recipe version ${version.version}, ${broughtWords(version)}`;
}

/** `by Kim, 2030-05-01 10:12`, in the tablet's own time. */
export function broughtWords({ time, person }: RecipeVersion): string {
	const by = person === NOBODY ? "somebody not named" : person;
	return `${person === "" ? "as it came with the job" : `by ${by}`}, ${localTime(time)}`;
}

function localTime(iso: string): string {
	const time = new Date(iso);
	const two = (n: number) => String(n).padStart(2, "0");
	const day = `${time.getFullYear()}-${two(time.getMonth() + 1)}-${two(time.getDate())}`;
	return `${day} ${two(time.getHours())}:${two(time.getMinutes())}`;
}
