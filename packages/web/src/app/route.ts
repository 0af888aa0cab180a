/** Where in the app one is, kept in the address after `#` so that back, reload and links work. */
import { useSyncExternalStore } from "react";

export const STAGES = [
	"start",
	"plan",
	"size",
	"what-if",
	"transfer",
	"versions",
	"changes",
	"checks",
	"reading",
	"prove",
	"power",
	"find",
] as const;
export type Stage = (typeof STAGES)[number];

export interface Route {
	/** Id of the job; empty: the first job of the shop. */
	readonly job: string;
	readonly stage: Stage;
	/** What within the stage, e.g. the rule and number of a finding. */
	readonly rest: readonly string[];
	/** Settings of the stage, e.g. the question of a reading. */
	readonly query: URLSearchParams;
}

/** Reads `#/JOB/STAGE/REST?QUERY`; whatever is missing or unknown gives the start. */
export function parseRoute(hash: string): Route {
	const [path = "", query = ""] = hash.replace(/^#\/?/, "").split("?");
	const [job = "", stage = "", ...rest] = path.split("/").map(decode);
	const known = STAGES.find((name) => name === stage) ?? "start";
	return { job, stage: known, rest, query: new URLSearchParams(query) };
}

export function formatRoute(route: Partial<Route>): string {
	const path = [route.job ?? "", route.stage ?? "start", ...(route.rest ?? [])].map(encodeURIComponent);
	const query = route.query?.toString() ?? "";
	return `#/${path.join("/")}${query === "" ? "" : `?${query}`}`;
}

function decode(text: string): string {
	try {
		return decodeURIComponent(text);
	} catch {
		return text;
	}
}

function subscribe(changed: () => void): () => void {
	window.addEventListener("hashchange", changed);
	return () => window.removeEventListener("hashchange", changed);
}

let last: { hash: string; route: Route } | undefined;

function snapshot(): Route {
	const { hash } = window.location;
	if (last?.hash !== hash) last = { hash, route: parseRoute(hash) };
	return last.route;
}

export const useRoute = (): Route => useSyncExternalStore(subscribe, snapshot);

/** Goes there; `replace` leaves no step to go back to. */
export function go(route: Partial<Route>, replace = false): void {
	const hash = formatRoute(route);
	if (replace) {
		window.history.replaceState(null, "", hash);
		window.dispatchEvent(new HashChangeEvent("hashchange"));
	} else window.location.hash = hash;
}
