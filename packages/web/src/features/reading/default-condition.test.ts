import { expect, test } from "vitest";
import { smallLoom } from "../../drawing/small-car.test-helper.js";
import { defaultCondition } from "./default-condition.js";

const loom = smallLoom();

test("ohms begin with the battery off, the rest with it on", () => {
	expect(defaultCondition(loom, "ohms")).toBe("off");
	expect(defaultCondition(loom, "volts")).toBe("rest");
});

test("where the car has monitors, in the condition in which most of them look", () => {
	const monitor = { when: "lamp-on" } as (typeof loom.monitors)[number];
	expect(defaultCondition({ ...loom, monitors: [monitor] }, "volts")).toBe("lamp-on");
});
