import { fileURLToPath } from "node:url";
import { openCar, rules, runRules, takeReading } from "@loomwright/engine";
import { expect, test } from "vitest";
import { readFolder } from "../folder/read-folder.js";
import { type PlanAnswer, planAnswer, planSchema } from "./plan.js";

const demo = (name: string): Readonly<Record<string, string>> =>
	readFolder(fileURLToPath(new URL(`../../../../demo/${name}/`, import.meta.url))).tables;
const tables = demo("main");
let asked: Promise<PlanAnswer> | undefined;
/** The demo car's proposal, found once. */
const proposed = () => {
	asked ??= planAnswer(openCar(tables), tables);
	return asked;
};

test("the demo car: proved, every circuit made, nothing else joined, for less than the recipe written by hand", async () => {
	const answer = planSchema.strict().parse(await proposed());
	expect([answer.possible, answer.misfits]).toEqual([true, []]);
	expect(answer.gap).toBeLessThan(1e-6);
	for (const { circuit, reached, ohms, strays } of answer.checks) {
		expect([circuit, reached === "", strays]).toEqual([circuit, false, []]);
		expect(ohms).toBeLessThan(0.3);
	}
	expect(answer.minutes).toBeLessThan(answer.byHand!.minutes);
	expect(answer.choices.map(({ circuit }) => circuit)).toHaveLength(13);
	expect(answer.choices.filter(({ second }) => second === null)).toEqual([]);
	expect(answer.alternatives.map(({ way }) => way)).toEqual(["work on the loom", "overlay loom", "new loom"]);
});

test("the start line goes as the shop did it: cut where it passes the clutch switch, on by its own bay section", async () => {
	const { steps, files } = await proposed();
	const titles = steps.map(({ title }) => title).join("\n");
	expect(titles).toContain("W170a+b extended to S-CLU.2");
	expect(titles).toContain("W170b joined to W171");
	expect(files["recipe.csv"]).toMatch(/,cut,W170a cut,W170a,,0.45 m,/);
});

test("the proposal's tables make a car that opens, keeps its functions and that no rule stops", async () => {
	const { files } = await proposed();
	const car = openCar({ ...tables, ...files });
	expect(car.misfits).toEqual([]);
	const findings = runRules(car.circuit("converted"), car.circuit("delivered"));
	expect(rules.length).toBeGreaterThan(30);
	expect(findings.filter(({ severity }) => severity !== "note")).toEqual([]);
});

test("the pair of the data bus lies together", async () => {
	const { choices } = await proposed();
	const [high, low] = ["bus-end-high", "bus-end-low"].map(
		(name) => choices.find(({ circuit }) => circuit === name)!,
	);
	expect(low!.text).toBe(high!.text.replace("BE-N.1", "BE-N.2").replace(/H$/, "L"));
});

const withTargets = (text: string): Record<string, string> => ({ ...tables, "targets.csv": text });

test("a circuit that cannot be made is named with why, and nothing is proposed", async () => {
	const files = withTargets(
		"target,from,to,size,joints\nlost,ECU.A24,ICU.13,16,0\nsound,ECU.A24,G13,0.5,0\n",
	);
	const { "places.csv": _, ...rest } = files;
	const answer = await planAnswer(openCar(rest), rest);
	expect(answer).toMatchObject({ possible: false, choices: [], steps: [], files: {} });
	expect(answer.hopeless.map(({ circuit }) => circuit)).toContain("lost");
});

test("circuits that want the same cavity are both named", async () => {
	const files = withTargets(
		"target,from,to,size\none,ECU.A24,G13,0.5\ntwo,ECU.A24,ICU.14,0.5\nother,BCU.A15,G15,0.5\n",
	);
	const answer = await planAnswer(openCar(files), files);
	expect(answer.hopeless.map(({ circuit }) => circuit)).toEqual(["one", "two"]);
});

test("a switch put into a live line: the line is parted, the lamps light with the switch and only with it", async () => {
	const wanted = `target,want,part,from,to,size
s-wrk,fit,S-WRK,,,
line,separate,,K1.87,E-L.1,
feed,,,S-WRK.1,K1.87,1.5
lamps,,,S-WRK.2,E-R.1,1
`;
	const files = { ...demo("small"), "targets.csv": wanted };
	const answer = await planAnswer(openCar(files), files);
	expect([answer.possible, answer.misfits, answer.checks.flatMap(({ strays }) => strays)]).toEqual([
		true,
		[],
		[],
	]);
	const circuit = openCar({ ...files, ...answer.files }).circuit("converted");
	const volts = (when: string) =>
		takeReading(circuit, { what: "volts", from: "E-L.1", to: "E-L.2", when }).value!;
	expect(volts("lamps-on")).toBeGreaterThan(11);
	expect(volts("lamps-on; S-WRK=off")).toBeLessThan(0.1);
});

test("contacts that no single wire joins cannot be parted", async () => {
	const wanted = "target,want,from,to\nring,separate,BAT.+,BAT.-\nline,separate,E-L.1,E-R.1\n";
	const files: Record<string, string> = { ...demo("small"), "targets.csv": wanted };
	// The two lamps hang on one splice, each by a wire of its own: there is a cut. The battery's posts are not joined at all.
	expect((await planAnswer(openCar(files), files)).possible).toBe(true);
	const wires = `${files["wires.csv"]}W99,SP3,E-L.1,1,GYRD,500 mm,work lamps,rear\n`;
	const doubled = {
		...files,
		"wires.csv": wires,
		"targets.csv": "target,want,from,to\nline,separate,E-L.1,SP3\n",
	};
	const answer = await planAnswer(openCar(doubled), doubled);
	expect(answer.hopeless).toEqual([
		{ circuit: "line", why: "no single wire that may be cut joins E-L.1 and SP3" },
	]);
});
