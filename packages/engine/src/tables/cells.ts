import { bad, good, type Parsed, parseNumber } from "../units/index.js";

/** Words separated by `;`, e.g. `wet; no joints`. Empty ones are dropped. */
export function parseList(text: string): readonly string[] {
	return text
		.split(";")
		.map((word) => word.trim())
		.filter((word) => word !== "");
}

const SETTINGS_WANTED = "settings such as ohms=12; hot_ohms=40";

/** Settings `name=number` separated by `;`, e.g. `ohms=12; hot_ohms=40`. */
export function parseSettings(text: string): Parsed<Readonly<Record<string, number>>> {
	const settings: Record<string, number> = {};
	for (const setting of parseList(text)) {
		const [, name, value] = /^([a-z][a-z0-9_]*)\s*=(.*)$/i.exec(setting) ?? [];
		if (name === undefined || value === undefined) {
			return bad(`"${setting}" is not a setting`, SETTINGS_WANTED);
		}
		if (Object.hasOwn(settings, name)) return bad(`"${name}" is set twice`, "each setting once");
		const number = parseNumber(value);
		if (!number.ok) return bad(`in "${setting}", ${number.problem}`, number.wanted);
		settings[name] = number.value;
	}
	return good(settings);
}

/** Settings as they are written in a cell; reads back to the same numbers. */
export function formatSettings(settings: Readonly<Record<string, number>>): string {
	return Object.entries(settings)
		.map(([name, value]) => `${name}=${value}`)
		.join("; ");
}
