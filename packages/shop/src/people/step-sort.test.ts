import { fileURLToPath } from "node:url";
import { openCar } from "@loomwright/engine";
import { expect, test } from "vitest";
import { readFolder } from "../folder/read-folder.js";
import { stepSort } from "./step-sort.js";

const car = openCar(readFolder(fileURLToPath(new URL("../../../../demo/main", import.meta.url))).tables);

test.each([
	["recipe/18", undefined, "start interlock"], // cuts the start line
	["recipe/33", undefined, "start interlock"], // neutral switch
	["recipe/01", undefined, "parts"],
	["recipe/68", undefined, "wiring"],
	["power/3", undefined, "first power"],
	["prove/12", undefined, "measuring"],
	["bleed the rear brakes", undefined, "brakes"],
	["new fuel hose", "parts", "fuel"],
	["paint the bracket", "other", "other"],
	["paint the bracket", undefined, "other"],
] as const)("%s, called %s, is of the sort %s", (step, claimed, sort) => {
	expect(stepSort(car, step, claimed)).toBe(sort);
});

test("whoever writes may make a step critical, but never less so", () => {
	expect(stepSort(car, "recipe/68", "restraints")).toBe("restraints");
	expect(stepSort(car, "recipe/18", "wiring")).toBe("start interlock");
	expect(stepSort(car, "recipe/18", "fuel")).toBe("start interlock");
});
