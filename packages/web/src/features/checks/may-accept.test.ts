import { expect, test } from "vitest";
import { NOBODY } from "../../server/person.js";
import { notAccepting } from "./may-accept.js";

test("who may accept what: as the server decides", () => {
	const may = (role: Parameters<typeof notAccepting>[0], name = "Kim") =>
		(["note", "warn", "stop"] as const).filter((severity) => notAccepting(role, name, severity) === "");
	expect(may("owner")).toEqual(["note", "warn", "stop"]);
	expect(may("technician")).toEqual(["note", "warn"]);
	expect([...may("apprentice"), ...may("guest"), ...may("nobody")]).toEqual([]);
	expect(may("bench")).toEqual(["note", "warn", "stop"]);
	expect(may("bench", NOBODY)).toEqual([]);
});
