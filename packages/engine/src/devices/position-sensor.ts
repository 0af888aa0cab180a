/**
 * Position sensor with a Hall element and an output stage: its signal is a share of its own supply against its own
 * return, held behind a small resistance. What loads the signal does not bend the share, as it does a potentiometer's.
 *
 * The output is a voltage-controlled source (a SPICE E element) from return to signal; its current comes back by the
 * return. The supply feeds the sensor's own draw alone. Without supply the output is its resistance to the return.
 */
import { type DeviceKind, own, PRACTICE, value } from "./types.js";

/** Standard deviation of the share, in shares of the supply: common practice, no source. */
const SHARE_SPREAD = 0.01;

export const positionSensor: DeviceKind = {
	kind: "position sensor",
	title: "Position sensor (Hall, ratiometric)",
	roles: ["supply", "return", "signal"],
	needs: ["supply", "return", "signal"],
	repeats: false,
	values: {
		supply_amps: value(0.01, "A", 1e-5, 1, PRACTICE),
		output_ohms: value(50, "ohm", 0.1, 1e5, PRACTICE),
		low_percent: value(10, "%", 0, 100, PRACTICE),
		high_percent: value(90, "%", 0, 100, PRACTICE),
	},
	states: () => ({ unit: "percent", min: 0, max: 100, default: 50 }),
	build(view, net) {
		const supply = view.pinOf("supply")!;
		const ground = view.pinOf("return")!;
		const low = view.value("low_percent") / 100;
		const high = view.value("high_percent") / 100;
		net.branch({
			a: supply,
			b: ground,
			siemens: view.value("supply_amps") / 5,
			spread: 0.2,
			owner: own(view.part, "supply"),
		});
		net.branch({
			a: view.pinOf("signal")!,
			b: ground,
			siemens: 1 / view.value("output_ohms"),
			spread: 0.2,
			control: {
				a: supply,
				b: ground,
				gain: low + ((high - low) * Number(view.state)) / 100,
				gainSpread: SHARE_SPREAD,
			},
			owner: own(view.part, "output"),
		});
	},
};
