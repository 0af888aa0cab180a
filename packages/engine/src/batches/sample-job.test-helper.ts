/** A small job: some faults of a car in a live and a dead condition. */
import type { Change, Circuit } from "../circuit/index.js";
import type { BatchJob } from "./job.js";

/** Every third branch opened or made poor, some points joined, two opened at once. */
export function sampleJob(circuit: Circuit): BatchJob {
	const nodes = circuit.nodes.length;
	const changes: Change[] = [{ branches: [], added: [] }];
	circuit.branches.forEach(({ a }, branch) => {
		if (branch % 3 === 0) changes.push({ branches: [{ branch, siemens: 0 }], added: [] });
		if (branch % 3 === 1) changes.push({ branches: [{ branch, seriesOhms: 30 }], added: [] });
		if (branch % 9 === 2 && a >= 0) changes.push({ branches: [], added: [{ a, b: -1, siemens: 20 }] });
		if (branch % 9 === 5) {
			const other = (branch * 7) % circuit.branches.length;
			changes.push({ branches: [branch, other].map((k) => ({ branch: k, siemens: 0 })), added: [] });
		}
	});
	const pairs = [...circuit.nodes.keys()]
		.filter((k) => k % 2 === 0)
		.map((a) => ({ a, b: (a * 5 + 1) % nodes }));
	const names = [...circuit.loom.conditions.keys()];
	const off = names.find((id) => id.startsWith("battery-off"))!;
	const live = names.find((id) => id !== off)!;
	return {
		loom: circuit.loom,
		changes,
		conditions: [
			{
				when: live,
				dead: false,
				probes: [
					...pairs.map((pair) => ({ kind: "volts" as const, ...pair })),
					{ kind: "amps", branches: [{ branch: 1, sign: 1 }] },
				],
			},
			{ when: off, dead: true, probes: pairs.map((pair) => ({ kind: "ohms" as const, ...pair })) },
		],
	};
}
