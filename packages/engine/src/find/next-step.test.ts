import { expect, it } from "vitest";
import { demoCar } from "../test-support/demo.test-helper.js";
import { minutesOf } from "./next-step.js";

const circuit = demoCar("main").circuit("converted");
const { loom } = circuit;
const contactsAt = (part: string) =>
	[...loom.contacts.values()].filter(({ connector }) => connector === part).map(({ id }) => id);

it("what must come off before a contact is reached costs its minutes once", () => {
	const hidden = [...loom.parts.values()].find(
		({ id, reachMinutes }) => (reachMinutes ?? 0) >= 8 && contactsAt(id).length > 1,
	)!;
	const [one, two] = contactsAt(hidden.id);
	const open = [...loom.contacts.values()].find(
		({ part, connector }) => loom.parts.get(connector || part)!.place === "bulkhead, left",
	)!.id;
	const ask = (from: string) => ({ what: "volts", from, to: "BAT.-", when: "key-on" }) as const;
	const [first, easy] = [minutesOf(circuit, ask(one!), undefined), minutesOf(circuit, ask(open), undefined)];
	expect(first - easy).toBe(hidden.reachMinutes);
	expect(minutesOf(circuit, ask(two!), ask(one!))).toBe(easy);
});
