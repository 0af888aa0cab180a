import { expect, test } from "vitest";
import { demoCar } from "../test-support/demo.test-helper.js";
import { Circuit } from "./circuit.js";
import { buildNetwork } from "./network.js";
import { settingsOf } from "./settings.js";

test("each condition of the demo car stands as if every part were built under it", () => {
	const { converted } = demoCar("main");
	const circuit = new Circuit(converted);
	expect(converted.conditions.size).toBeGreaterThan(20);
	for (const condition of converted.conditions.keys()) {
		const whole = buildNetwork(converted, settingsOf(converted, condition));
		const standing = circuit.standing(condition);
		expect([...standing.siemens]).toEqual(whole.branches.map(({ siemens }) => siemens));
		expect([...standing.emf]).toEqual(whole.branches.map(({ emf = 0 }) => emf));
		expect(standing.automata.map(({ spec }) => [spec.part, spec.element, spec.branches, spec.table])).toEqual(
			whole.automata.map((spec) => [spec.part, spec.element, spec.branches, spec.table]),
		);
	}
});

test("a connector that is off opens the contacts it houses, and nothing else", () => {
	const circuit = new Circuit(demoCar("main").converted);
	const sound = circuit.standing("key-off");
	const housing = [...demoCar("main").converted.contacts.values()].find(
		({ connector }) => connector !== "",
	)!.connector;
	const off = circuit.standing(`key-off; ${housing}=unmated`);
	circuit.branches.forEach(({ owner }, k) => {
		const open = owner.what === "mated contact" && (owner.element === housing || owner.id === housing);
		expect(off.siemens[k]).toBe(open ? 0 : sound.siemens[k]);
	});
});
