/** The commands, their options and their help. */
import { Argument, Command, InvalidArgumentError, Option } from "commander";
import { compare } from "./commands/compare.js";
import { addCopyCommands, placeOptions } from "./commands/copy-commands.js";
import { find } from "./commands/find.js";
import { plan } from "./commands/plan.js";
import { power } from "./commands/power.js";
import { prove } from "./commands/prove.js";
import { reading } from "./commands/reading.js";
import { rules } from "./commands/rules.js";
import { serve } from "./commands/serve.js";
import { size } from "./commands/size.js";
import { transfer } from "./commands/transfer.js";
import { whatIf } from "./commands/what-if.js";
import type { Terminal } from "./terminal.js";

/** @param exit told the exit code of the command that ran */
export function program(terminal: Terminal, exit: (code: number) => void): Command {
	const root = new Command("loomwright")
		.description(
			"The wiring of a car under conversion, as a network that computes.\n" +
				"A car is a folder of tables (docs/tables.md); demo/small and demo/main are such folders.\n" +
				"No substitute for the maker's procedures, local codes, or a licensed person where one is required.",
		)
		.helpCommand("help [command]", "tells how a command is used")
		.helpOption("-h, --help", "tells how it is used")
		// Errors are said once, by whoever catches them.
		.configureOutput({ writeOut: terminal.out, writeErr: () => {}, getOutHelpWidth: () => terminal.columns })
		.exitOverride();
	const command = (name: string, what: string, examples: readonly string[]) =>
		root
			.command(name)
			.description(what)
			.helpOption("-h, --help", "tells how it is used")
			.addHelpText(
				"after",
				`\nFor example:\n${examples.map((one) => `  ${CALL} ${one}\n`).join("")}${EXITS}`,
			);
	const folder = () => new Argument("FOLDER", "folder of the car's tables");
	const json = () => new Option("--json", "answer as JSON (docs/json.md)");

	command("compare", "What the conversion recipe changes, per connector and cavity.", ["compare demo/small"])
		.addArgument(folder())
		.addOption(json())
		.action((path, options) => exit(compare(terminal, path, options)));

	command("rules", "What must be mended before cutting or powering up.", [
		"rules demo/small",
		"rules demo/small --recipe none",
	])
		.addArgument(folder())
		.addOption(recipe().default("whole"))
		.addOption(json())
		.action((path, options) => exit(rules(terminal, path, options)));

	command("size", "What each wire, fuse, load and splice carries, and what terminals and splices to make.", [
		"size demo/main",
		"size demo/small --recipe none",
	])
		.addArgument(folder())
		.addOption(new Option("--all", "show every wire, not only those that the recipe works on; JSON has all"))
		.addOption(recipe().default("whole"))
		.addOption(json())
		.action((path, options) => exit(size(terminal, path, options)));

	command("what-if", "What one change would do: to readings, findings, sizes and work.", [
		"what-if demo/main --set wires W422a size 0.35",
		"what-if demo/main --set recipe 25 to G12",
		"what-if demo/main --without 37",
	])
		.addArgument(folder())
		.addOption(
			new Option(
				"--set <words...>",
				"TABLE ROW COLUMN CELL: another cell; ROW is what stands in the row's first column",
			),
		)
		.addOption(new Option("--without <step>", "a recipe step left out"))
		.addOption(recipe().default("whole"))
		.addOption(json())
		.action((path, options) => exit(whatIf(terminal, path, options)));

	command("reading", "What a meter would show between two points of the loom, on a sound car.", [
		"reading demo/small CU.7 CU.2 --what volts --when key-on",
		"reading demo/small K1.85 K1.86 --what ohms --when battery-off",
	])
		.addArgument(folder())
		.argument("A", "contact or joint of the first lead; CONTACT!pin is the part's own side")
		.argument("B", "contact or joint of the second lead; body is the body metal")
		.addOption(
			new Option("--what <kind>", "drop is volts across a part of a working circuit")
				.choices(["volts", "drop", "ohms", "amps"])
				.default("volts"),
		)
		.addOption(
			new Option("--when <condition>", "how the car stands; left out: lists the conditions there are"),
		)
		.addOption(recipe().default("whole"))
		.addOption(json())
		.action((path, a, b, options) => exit(reading(terminal, path, a, b, options)));

	command("prove", "The readings to take before power, and what those taken speak for.", [
		"prove demo/small",
		"prove demo/small --entries my-readings.csv",
	])
		.addArgument(folder())
		.addOption(
			new Option("--entries <file>", "what was read, as a table of `row` and `value` (docs/json.md)"),
		)
		.addOption(
			new Option("--least-ohms <ohms>", "from how many added ohms on a poor connection is to be caught")
				.default(1)
				.argParser(ohms),
		)
		.addOption(json())
		.action((path, options) => exit(prove(terminal, path, options)));

	command("power", "The first power-up in stages: what to connect, read and see before going on.", [
		"power demo/small",
	])
		.addArgument(folder())
		.addOption(json())
		.action((path, options) => exit(power(terminal, path, options)));

	command("find", "Which faults the evidence speaks for, and which reading to take next.", [
		"find demo/main --evidence demo/main/practice/connector-not-locked.json",
		"find demo/main --evidence my-evidence.json --top 3",
	])
		.addArgument(folder())
		.addOption(
			new Option(
				"--evidence <file>",
				"codes, readings and functions seen (docs/evidence.md)",
			).makeOptionMandatory(),
		)
		.addOption(
			new Option("--top <count>", "faults to show as text; JSON has all")
				.default(10)
				.argParser(whole(1, 1000)),
		)
		.addOption(recipe("the evidence file's `of`"))
		.addOption(
			new Option("--shop <folder>", "data folder of a shop, whose own repairs are counted into the chances"),
		)
		.addOption(json())
		.action(async (path, options) => exit(await find(terminal, path, options)));

	command("plan", "Proposes a recipe for the circuits wanted: least work, material and risk.", [
		"plan demo/main",
		"plan demo/main --out /tmp/proposed",
	])
		.addArgument(folder())
		.addOption(new Option("--out <folder>", "writes recipe.csv and new-joints.csv of the proposal there"))
		.addOption(json())
		.action(async (path, options) => exit(await plan(terminal, path, options)));

	command("transfer", "Which steps of a car's recipe can be done on another car of its kind.", [
		"transfer demo/main demo/other-market",
		"transfer demo/main demo/other-market --out /tmp/draft",
	])
		.addArgument(folder())
		.addArgument(new Argument("TO", "folder of the other car's tables"))
		.addOption(
			new Option(
				"--out <folder>",
				"writes a draft of the recipe for the other car there, with its new parts",
			),
		)
		.addOption(json())
		.action((path, to, options) => exit(transfer(terminal, path, to, options)));

	command("serve", "Starts the tablet app and the API on this machine.", [
		"serve",
		"serve my-car --port 9000",
	])
		.addArgument(new Argument("[FOLDER]", "car to make a job of; left out: demo/main, the first time"))
		.addOption(
			new Option("--port <port>", "0: any free one").env("PORT").default(8080).argParser(whole(0, 65535)),
		)
		.addOption(
			new Option(
				"--host <address>",
				"0.0.0.0: every network of this machine; only once an owner is set up (docs/shop.md)",
			).default("127.0.0.1"),
		)
		.addOption(new Option("--cert <file>", "the shop's own certificate, in PEM: https (docs/shop.md)"))
		.addOption(new Option("--key <file>", "the key of that certificate, in PEM"))
		.addOption(placeOptions()[0]!)
		.addOption(placeOptions()[1]!)
		.addOption(json())
		.action(async (path, options) => exit(await serve(terminal, path, options)));

	addCopyCommands(command, json, terminal, exit);

	return root;
}

const CALL = "npm run -s loomwright --";

const EXITS = `
Exit code 0: answered. 1: a finding to mend, a reading that is not right, or a recipe step that does not fit.
2: the command or its files are wrong; stderr says where, what, and what would be right.
`;

const recipe = (otherwise = ""): Option =>
	new Option(
		"--recipe <which>",
		`whole: the loom as converted; none: as delivered${otherwise === "" ? "" : ` (default: ${otherwise})`}`,
	).choices(["whole", "none"]);

/** Reads ohms above nothing. */
const ohms = (text: string) => {
	const value = Number(text);
	if (!(value > 0 && value <= 1e6))
		throw new InvalidArgumentError("Ohms above 0, at most a million, are wanted.");
	return value;
};

/** Reads a whole number of a range. */
const whole = (least: number, most: number) => (text: string) => {
	const value = Number(text);
	if (!/^\d+$/.test(text) || value < least || value > most)
		throw new InvalidArgumentError(`A whole number from ${least} to ${most} is wanted.`);
	return value;
};
