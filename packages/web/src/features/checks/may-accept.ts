import type { Finding } from "@loomwright/engine";
import { NOBODY } from "../../server/person.js";
import type { Session } from "../../server/types.js";

/**
 * Why this person may not accept a finding, with who may; empty: they may. The server has the last word.
 * @param name under which entries are written
 */
export function notAccepting(
	role: Session["who"]["role"],
	name: string,
	severity: Finding["severity"],
): string {
	if (role === "guest" || role === "nobody") return "The shop can accept it.";
	if (role === "apprentice") return "A technician or the owner can accept it.";
	if (role === "technician" && severity === "stop") return "Only the owner can accept what says stop.";
	if (name === NOBODY) return "To accept it, first enter your name on the start page.";
	return "";
}
