import { expect, onTestFinished, test } from "vitest";
import { readFolder } from "../../folder/read-folder.js";
import { SMALL_CAR } from "../server.test-helper.js";
import { Calculator } from "./calculator.js";

const { tables } = readFolder(SMALL_CAR);

function calculator(): Calculator {
	const own = new Calculator();
	onTestFinished(() => own.close());
	return own;
}

test("errors in what was asked come back as such, all of them", async () => {
	const broken = {
		...tables,
		"wires.csv": tables["wires.csv"]!.replace("CU.7", "CU.x").replace("CU.5", "CU.y"),
	};
	await expect(calculator().ask("changes", broken, null)).rejects.toMatchObject({
		name: "InputErrors",
		errors: [{ file: "wires.csv" }, { file: "wires.csv" }],
	});
});

test("closed while computing, it gives up; asked again, it starts anew", async () => {
	const own = calculator();
	const given = own.ask("find", tables, {
		evidence: '{"occasions": [{"codes": ["B1A02"]}]}',
		known: { record: { cars: 0, repairs: [], work: [] }, doneBy: new Map() },
	});
	const refused = expect(given).rejects.toMatchObject({ status: 503, message: "the server is stopping" });
	await own.close();
	await refused;
	expect((await own.ask("changes", tables, null)).misfits).toEqual([]);
});
