import { readdirSync } from "node:fs";
import { finderOf, openCar, parseEvidence } from "@loomwright/engine";
import { expect, test, vi } from "vitest";
import { readFolder } from "../../folder/read-folder.js";
import { useKept } from "../../kept/effects.js";
import { KeptFolder } from "../../kept/folder.js";
import { temporaryFolder } from "../../store/temporary.test-helper.js";
import { SMALL_CAR } from "../server.test-helper.js";
import { EffectsKeeper } from "./effects-keeper.js";

test("what a search did not find kept is found on a thread apart, for the next", async () => {
	const { tables } = readFolder(SMALL_CAR);
	const evidence = parseEvidence('{"occasions": [{"codes": ["B1A02"]}]}', "");
	const kept = new KeptFolder(temporaryFolder());
	const keeper = new EffectsKeeper(kept, 0);
	const car = openCar(tables);
	keeper.give(car, tables, evidence);
	keeper.give(car, tables, evidence);
	await vi.waitFor(
		() => expect(readdirSync(kept.folder)).toEqual([expect.stringMatching(/^effects-.*\.kept$/)]),
		{
			timeout: 20_000,
		},
	);
	const next = openCar(tables);
	keeper.give(next, tables, evidence);
	expect(useKept(finderOf(next, evidence), new KeptFolder(temporaryFolder()))).toBe(true);
});
