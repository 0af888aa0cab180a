/** Small random looms for proving: loads between a fused feed and ground, some behind a splice, a switch or a plug. */
import fc from "fast-check";
import { battery, connector, joint, part, wire } from "../rules/support/bench-loom.test-helper.js";
import { tinyCar } from "./tiny-car.test-helper.js";
import type { Provable } from "./types.js";

const load = fc.record({
	ohms: fc.double({ min: 0, max: 3, noNaN: true }).map((power) => 10 ** power),
	/** Behind a switch of its own. */
	switched: fc.boolean(),
	/** Its two contacts in a plug, next to each other. */
	plugged: fc.boolean(),
	mm2: fc.constantFrom(0.35, 1, 2.5),
	metres: fc.double({ min: 0.1, max: 5, noNaN: true }),
});

/** One to three loads; their feeds meet in a splice. */
export const randomCar: fc.Arbitrary<Provable> = fc
	.array(load, { minLength: 1, maxLength: 3 })
	.map((loads) => {
		const fuse = part("F1", "fuse", ["in", "out"], { values: { amps: 10 } });
		const parts = [battery, fuse];
		const wires = [
			wire("W-", "BAT.- > G1", 10, 0.3),
			wire("W+", "BAT.+ > F1.in", 2.5, 0.5),
			wire("WF", "F1.out > SP", 2.5, 1),
		];
		loads.forEach(({ ohms, switched, plugged, mm2, metres }, k) => {
			if (plugged) parts.push(connector(`X${k}`));
			const resistor = part(`R${k}`, "resistor", ["a", "b"], {
				values: { ohms },
				...(plugged ? { connector: `X${k}` } : {}),
			});
			// In a plug the cavities are 1 and 2, so that they are neighbours.
			const contacts = resistor.contacts.map((c, at) => (plugged ? { ...c, cavity: String(at + 1) } : c));
			parts.push({ ...resistor, contacts });
			if (switched) {
				parts.push(part(`S${k}`, "switch", ["1", "2"], { positions: "off:; on:1-2" }));
				wires.push(
					wire(`WS${k}`, `SP > S${k}.1`, mm2, metres),
					wire(`WA${k}`, `S${k}.2 > R${k}.a`, mm2, metres),
				);
			} else wires.push(wire(`WA${k}`, `SP > R${k}.a`, mm2, metres));
			wires.push(wire(`WB${k}`, `R${k}.b > G1`, mm2, metres));
		});
		return tinyCar({ parts, wires, joints: [joint("G1", "ground"), joint("SP")] });
	});
