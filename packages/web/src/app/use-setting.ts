/** Settings of a screen kept in the address, so that a reload or a link shows the same. */
import type { Which } from "@loomwright/engine";
import { go, useRoute } from "./route.js";

export type Settings = Readonly<Record<string, string>>;

/** The settings, and how to change some of them; an empty value takes one away. */
export function useSettings(): [URLSearchParams, (change: Settings) => void] {
	const route = useRoute();
	const change = (settings: Settings) => {
		const query = new URLSearchParams(route.query);
		for (const [name, value] of Object.entries(settings)) {
			if (value === "") query.delete(name);
			else query.set(name, value);
		}
		go({ ...route, query }, true);
	};
	return [route.query, change];
}

export const whichOf = (query: URLSearchParams): Which =>
	query.get("loom") === "delivered" ? "delivered" : "converted";
