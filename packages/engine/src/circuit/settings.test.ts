import { expect, test } from "vitest";
import { demoCar } from "../test-support/demo.test-helper.js";
import { conditionOf, settingsOf } from "./settings.js";

const { converted: loom } = demoCar("main");

test("a listed condition, those it is like included", () => {
	expect(Object.fromEntries(settingsOf(loom, "cranking"))).toMatchObject({ "S-KEY": "start", "S-HBR": "on" });
});

test("a listed condition changed in place", () => {
	const said = settingsOf(loom, "key-on; X-ECUA=unmated; S-CLU=pressed; B-ECT=80");
	expect(said).toEqual(
		new Map([...settingsOf(loom, "key-on"), ["X-ECUA", "unmated"], ["S-CLU", "pressed"], ["B-ECT", "80"]]),
	);
});

test("a condition from nothing, and back", () => {
	const settings = new Map([
		["BAT", "off"],
		["ECU.A10", "on"],
	]);
	expect(conditionOf(settings)).toBe("BAT=off; ECU.A10=on");
	expect(settingsOf(loom, conditionOf(settings))).toEqual(settings);
	expect(conditionOf(settings, "key-on")).toBe("key-on; BAT=off; ECU.A10=on");
	expect(conditionOf([], "key-on")).toBe("key-on");
});

test.each([
	["keyon", /no condition 'keyon'; this car has: battery-off/],
	["keyon; BAT=off", /no condition 'keyon'/],
	["key-on; X-ECUX=unmated", /no 'X-ECUX' in this car; X-ECU/],
	["key-on; X-ECUA=out", /'out' is no state of X-ECUA; one of: mated, unmated/],
	["key-on; X-ECUA", /'X-ECUA' is no setting; SUBJECT=STATE is/],
	["key-on; B-ECT=warm", /'warm' is no state of B-ECT; a number from/],
])("%s is refused with what would be right", (condition, message) => {
	expect(() => settingsOf(loom, condition)).toThrow(RangeError);
	expect(() => settingsOf(loom, condition)).toThrow(message);
});
