import type { Entry, Session } from "../../server/types.js";

/** Whether this person may take an entry back, as the server will decide. */
export function mayCorrect(
	{ role, account }: Session["who"],
	entry: Pick<Entry, "kind" | "account">,
): boolean {
	// Tables come back by replacing them again.
	if (role === "guest" || role === "nobody" || entry.kind === "tables") return false;
	if (role === "bench" || role === "owner" || entry.account === account) return true;
	return role === "technician" && entry.kind !== "correction";
}
