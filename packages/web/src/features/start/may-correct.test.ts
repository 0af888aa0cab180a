import { expect, test } from "vitest";
import type { Session } from "../../server/types.js";
import { mayCorrect } from "./may-correct.js";

const who = (role: Session["who"]["role"]) => ({ role, account: "self", name: "", job: "" });
const ENTRIES = [
	{ kind: "sign-off", account: "self" },
	{ kind: "sign-off", account: "other" },
	{ kind: "correction", account: "other" },
	{ kind: "tables", account: "self" },
];

test.each([
	["bench", [true, true, true, false]],
	["owner", [true, true, true, false]],
	["technician", [true, true, false, false]],
	["apprentice", [true, false, false, false]],
	["guest", [false, false, false, false]],
	["nobody", [false, false, false, false]],
] as const)("as %s", (role, may) => {
	expect(ENTRIES.map((entry) => mayCorrect(who(role), entry))).toEqual(may);
});
