import type { WireEnd } from "./types.js";

/** A wire's end out of its cell. A contact's name has a dot in it, a joint's has none. Whether it exists is not asked here. */
export function parseWireEnd(text: string): WireEnd {
	if (text === "cut") return { at: "loose", insulated: false };
	if (text === "stowed") return { at: "loose", insulated: true };
	return text.includes(".") ? { at: "contact", contact: text } : { at: "joint", joint: text };
}

/** A wire's end as it is written in a table: a contact, a joint, `cut` or `stowed`. */
export function formatWireEnd(end: WireEnd): string {
	if (end.at === "contact") return end.contact;
	if (end.at === "joint") return end.joint;
	return end.insulated ? "stowed" : "cut";
}
