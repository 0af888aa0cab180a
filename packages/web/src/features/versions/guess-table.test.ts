import { expect, test } from "vitest";
import { guessTable } from "./guess-table.js";

test("by its name, whatever the ending", () => {
	expect(["recipe.csv", "Targets.TSV", "new-joints.csv"].map((name) => guessTable(name, ""))).toEqual([
		"recipe",
		"targets",
		"new-joints",
	]);
});

test("by its header where the name tells nothing", () => {
	const guess = (text: string) => guessTable("March, last.csv", text);
	expect(guess("step,kind,title\n1,cut,\n")).toBe("recipe");
	expect(guess("Target;want;from\n")).toBe("targets");
	expect(guess("place\tzone\tnear\n")).toBe("places");
	expect(guess("wire,from,to,size\n")).toBe("wires");
});

test("nothing is guessed where nothing tells", () => {
	expect(guessTable("a.csv", "name,what\n")).toBe("");
	expect(guessTable("a.csv", "")).toBe("");
});
