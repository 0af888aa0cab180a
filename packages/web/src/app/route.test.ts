import { expect, test } from "vitest";
import { formatRoute, parseRoute } from "./route.js";

test("reads job, stage, rest and query", () => {
	const route = parseRoute("#/demo/checks/stop%2F1?loom=delivered");
	expect(route).toMatchObject({ job: "demo", stage: "checks", rest: ["stop/1"] });
	expect(route.query.get("loom")).toBe("delivered");
});

test("what is missing, unknown or badly escaped gives the start of that job", () => {
	expect(parseRoute("")).toMatchObject({ job: "", stage: "start", rest: [] });
	expect(parseRoute("#/demo/nowhere")).toMatchObject({ job: "demo", stage: "start" });
	expect(parseRoute("#/%E0%A4%A/find")).toMatchObject({ job: "%E0%A4%A", stage: "find" });
});

test("what is written is read back", () => {
	const route = {
		job: "a/b ü",
		stage: "reading",
		rest: ["x y"],
		query: new URLSearchParams({ from: "K1.87" }),
	};
	const back = parseRoute(formatRoute({ ...route, stage: "reading" }));
	expect(back).toMatchObject({ job: "a/b ü", stage: "reading", rest: ["x y"] });
	expect(back.query.get("from")).toBe("K1.87");
});
