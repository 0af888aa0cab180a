/** What the whole would cost otherwise: with another option, done another way, or without a circuit. */
import type { Hopeless } from "./options.js";
import { chosenOf, inMode, type Outlook, totalOf } from "./outlook.js";
import { type Layout, MODES, type Mode, type Solver } from "./program.js";
import type { Alternative } from "./propose.js";
import type { Option, PlanTables } from "./types.js";

/** The whole solved again with an option forbidden, and those that differ from it in a detail; with every way to part. */
export function secondBest(
	outlooks: readonly Outlook[],
	{ circuit, text }: Option,
	solver: Solver,
): { option: Option; minutes: number } | undefined {
	let next: { option: Option; minutes: number } | undefined;
	for (const outlook of outlooks.toSorted((a, b) => a.minutes - b.minutes)) {
		const { layout, modes } = outlook;
		const off = layout.options.flatMap((one, k) => {
			if (one.circuit !== circuit || one.text !== text) return [];
			return [layout.optionColumn(k), ...[layout.overlayColumn(k)].filter((column) => column !== undefined)];
		});
		for (const mode of [MODES[0], MODES[1]] as const) {
			// What costs more even with nothing forbidden need not be asked.
			if (next !== undefined && totalOf(outlook, modes.get(mode)!) >= next.minutes) continue;
			const solved = solver(inMode(layout, mode, off));
			const minutes = totalOf(outlook, solved);
			const option = chosenOf(layout, solved).find((one) => one.circuit === circuit);
			if (option !== undefined && minutes < (next?.minutes ?? Number.POSITIVE_INFINITY))
				next = { option, minutes };
		}
	}
	return next;
}

/** The cheapest whole in one way of doing it. */
export function alternative(outlooks: readonly Outlook[], mode: Mode): Alternative {
	const minutesOf = (outlook: Outlook) => totalOf(outlook, outlook.modes.get(mode)!);
	const best = outlooks.reduce((one, other) => (minutesOf(other) < minutesOf(one) ? other : one));
	const solved = best.modes.get(mode)!;
	if (solved.values.length === 0) return { mode, minutes: undefined, joints: 0 };
	const joints =
		mode === "new loom" ? 0 : chosenOf(best.layout, solved).reduce((sum, option) => sum + option.joints, 0);
	return { mode, minutes: minutesOf(best), joints };
}

/** Circuits without which the rest could be made; all of them where no single one is to blame. */
export function contending(layout: Layout, plan: PlanTables, solver: Solver): Hopeless[] {
	const why = "it and another circuit need the same cavity, lead or splice, or a pair cannot lie together";
	const blamed = plan.circuits.filter(
		({ target }) => solver(inMode(without(layout, plan, target), MODES[0])).values.length > 0,
	);
	return (blamed.length > 0 ? blamed : plan.circuits).map(({ target }) => ({ circuit: target, why }));
}

/** The program with a circuit's rows let go: those that tie its options to the mode and to the other of its pair. */
function without(layout: Layout, { circuits }: PlanTables, circuit: string): Layout {
	const { program, options, optionColumn, overlayColumn } = layout;
	const pair = circuits.find(({ target }) => target === circuit)?.pair ?? "";
	const mates = circuits.filter((one) => one.target === circuit || (pair !== "" && one.pair === pair));
	const columnsOf = (names: readonly string[]) =>
		new Set(
			options.flatMap((option, k) =>
				names.includes(option.circuit) ? [optionColumn(k), overlayColumn(k) ?? -1] : [],
			),
		);
	const own = columnsOf([circuit]);
	const paired = columnsOf(mates.map(({ target }) => target));
	const rows = program.rows.filter(({ terms, low, high }) => {
		if (low !== 0 || high !== 0) return true;
		return !terms.some(([k]) => own.has(k)) && !terms.every(([k]) => paired.has(k));
	});
	return { ...layout, program: { ...program, rows } };
}
