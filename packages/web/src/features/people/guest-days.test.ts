import { expect, test } from "vitest";
import { dayAfter, endOfDay } from "./guest-days.js";

test("days go over the ends of months and years", () => {
	expect(dayAfter(new Date(2030, 0, 31, 23, 59), 1)).toBe("2030-02-01");
	expect(dayAfter(new Date(2030, 11, 20), 14)).toBe("2031-01-03");
});

test("a link lasts to the end of its day, wherever the tablet is", () => {
	const end = new Date(endOfDay("2030-03-31")!);
	expect([end.getFullYear(), end.getMonth(), end.getDate()]).toEqual([2030, 2, 31]);
	expect([end.getHours(), end.getMinutes(), end.getSeconds()]).toEqual([23, 59, 59]);
	for (const wrong of ["", "31.3.2030", "2030-02-30", "2030-13-01"]) expect(endOfDay(wrong)).toBeUndefined();
});
