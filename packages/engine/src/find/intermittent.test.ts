/** Faults that are there on one occasion and not on another, with nothing done to the car between. */
import { describe, expect, it } from "vitest";
import type { Fault } from "../faults/index.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { findFaults } from "./find.js";
import type { Item } from "./items.js";
import { posterior } from "./posterior.js";
import type { Evidence, Occasion } from "./types.js";

const nothing: Occasion = {
	...{ note: "", reseated: "", codes: undefined, units: [] },
	...{ functions: {}, readings: [], bench: {} },
};
const evidence = (...occasions: Partial<Occasion>[]): Evidence => ({
	title: "",
	of: "converted",
	occasions: occasions.map((occasion) => ({ ...nothing, ...occasion })),
});

describe("by hand", () => {
	const fault = (id: string, comesAndGoes: number): Fault => ({
		...{ id, kind: "", where: id, place: "", prior: 0.01, comesAndGoes },
		patterns: [{ weight: 1, change: { branches: [], added: [] } }],
		...{ shakenBy: "", inParts: [], path: [], mend: "" },
	});
	/** Seen with this chance under any fault and under none. */
	const seen = (occasion: number, ifThere: number, ifSound: number): Item => ({
		...{ text: "", occasion, telling: true, when: "", stray: 0 },
		entry: { kind: "bench", part: "" },
		log: (of) => Math.log(of ? ifThere : ifSound),
	});
	// Seen, not seen, seen: 0.9, 0.1, 0.9 if the fault is there; 0.01, 0.99, 0.01 if not.
	const items = [seen(0, 0.9, 0.01), seen(1, 0.1, 0.99), seen(2, 0.9, 0.01)];
	const { weighed } = posterior(
		[fault("steady", 0), fault("some come and go", 0.3)],
		items,
		evidence({}, {}, {}),
		{ soundPrior: 0.01, pairs: false },
	);
	const of = (id: string) => weighed.find((w) => w.fault?.id === id)!;

	it("steady: 0.9 x 0.1 x 0.9; coming and going: (0.9 + 0.01) (0.1 + 0.99) (0.9 + 0.01) / 8", () => {
		const steady = 0.9 * 0.1 * 0.9;
		const coming = (0.91 * 1.09 * 0.91) / 8;
		const mixed = 0.7 * steady + 0.3 * coming;
		expect(of("some come and go").posterior / of("steady").posterior).toBeCloseTo(mixed / steady, 9);
		expect(of("some come and go").comesAndGoes).toBeCloseTo((0.3 * coming) / mixed, 9);
		expect(of("steady").comesAndGoes).toBe(0);
	});
});

describe("on the demo car", () => {
	const read = (codes: string[]): Partial<Occasion> => ({ codes, units: ["ECU"] });
	const first = (...occasions: Partial<Occasion>[]) =>
		findFaults(demoCar("main"), evidence(...occasions)).faults[0]!;

	it("a code that comes and goes: still the circuit that sets it, and said to come and go", () => {
		const { path, comesAndGoes } = first(read(["P0118"]), read([]), read(["P0118"]), read([]));
		expect(path.join(" ")).toMatch(/ECT|B28/);
		expect(comesAndGoes).toBeGreaterThan(0.8);
	});

	it("one that is always there is most likely steady", () => {
		expect(first(read(["P0118"]), read(["P0118"]), read(["P0118"])).comesAndGoes).toBeLessThan(0.1);
	});
});
