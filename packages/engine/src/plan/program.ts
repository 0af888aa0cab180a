/**
 * The choice as an integer program: data only, so that any solver can be handed in.
 *
 * A column for each option of each circuit, each facility, each cost paid once, and each way of doing the
 * whole; all of them 0 or 1. Least sum of cost x column, within the rows.
 */
import type { Choices } from "./options.js";
import type { Facility, Option, Price } from "./types.js";

export interface Program {
	/** Cost of each column, in minutes. */
	readonly costs: readonly number[];
	/** The largest value of each column, 0 or 1. */
	readonly upper: readonly number[];
	readonly rows: readonly ProgramRow[];
}

/** low <= sum of coefficient x column <= high; undefined: no limit. */
export interface ProgramRow {
	readonly terms: readonly (readonly [column: number, coefficient: number])[];
	readonly low: number | undefined;
	readonly high: number | undefined;
}

export interface Solved {
	/** Empty where no choice keeps all rows. */
	readonly values: readonly number[];
	readonly objective: number;
	/** No choice costs less than this. */
	readonly bound: number;
}

/** Least cost, proved or with the bound that it came to. */
export type Solver = (program: Program) => Solved;

/** Ways of doing the whole. */
export const MODES = ["work on the loom", "overlay loom", "new loom"] as const;
export type Mode = (typeof MODES)[number];

export interface Layout {
	readonly program: Program;
	readonly options: readonly Option[];
	readonly facilities: readonly Facility[];
	/** Column of each, by index. */
	readonly optionColumn: (k: number) => number;
	/** The same option made in the overlay loom; undefined where it cannot be. */
	readonly overlayColumn: (k: number) => number | undefined;
	readonly facilityColumn: (k: number) => number;
	readonly modeColumn: (mode: Mode) => number;
}

interface Terms {
	/** Pairs of circuits that lie together. */
	readonly pairs: readonly (readonly [string, string])[];
	readonly total: (price: Price) => number;
	/** The price of an option made in the overlay loom. */
	readonly overlaid: (option: Option) => Price;
	readonly modes: Readonly<Record<Mode, Price>>;
}

export function layOut({ options, facilities }: Choices, circuits: readonly string[], terms: Terms): Layout {
	const { total } = terms;
	const costs: number[] = [];
	const rows: ProgramRow[] = [];
	const column = (cost: number) => costs.push(cost) - 1;
	const mode = new Map(MODES.map((name) => [name, column(total(terms.modes[name]))]));
	const kept = options.map((option) => column(total(option.own)));
	const overlaid = options.map((option) =>
		option.allNew ? column(total(terms.overlaid(option))) : undefined,
	);
	const built = facilities.map(({ own }) => column(total(own)));
	const once = new Map<string, number>();
	for (const { shared } of [...options, ...facilities])
		for (const [key, price] of shared) if (!once.has(key)) once.set(key, column(total(price)));
	/** Columns that stand for a circuit's options. */
	const ofCircuit = (circuit: string, where: (option: Option) => boolean = () => true) =>
		options.flatMap((option, k) =>
			option.circuit === circuit && where(option)
				? [kept[k]!, ...(overlaid[k] === undefined ? [] : [overlaid[k]])]
				: [],
		);
	const ones = (columns: readonly number[], coefficient = 1) => columns.map((k) => [k, coefficient] as const);

	rows.push({ terms: ones([...mode.values()]), low: 1, high: 1 });
	for (const circuit of circuits) {
		const own = options.flatMap((option, k) => (option.circuit === circuit ? [k] : []));
		const keep = own.map((k) => kept[k]!);
		const over = own.flatMap((k) => overlaid[k] ?? []);
		rows.push({ terms: [...ones(keep), [mode.get("work on the loom")!, -1]], low: 0, high: 0 });
		rows.push({ terms: [...ones(over), [mode.get("overlay loom")!, -1]], low: 0, high: 0 });
		// One option of each circuit is chosen, so its options together need what any of them needs.
		for (const key of once.keys()) {
			const users = ofCircuit(circuit, ({ shared }) => shared.has(key));
			if (users.length > 0)
				rows.push({ terms: [...ones(users), [once.get(key)!, -1]], low: undefined, high: 0 });
		}
		facilities.forEach(({ id }, f) => {
			const needing = ofCircuit(circuit, ({ needs }) => needs.includes(id));
			const barring = ofCircuit(circuit, ({ bars }) => bars.includes(id));
			if (needing.length > 0)
				rows.push({ terms: [...ones(needing), [built[f]!, -1]], low: undefined, high: 0 });
			if (barring.length > 0)
				rows.push({ terms: [...ones(barring), [built[f]!, 1]], low: undefined, high: 1 });
		});
	}
	facilities.forEach(({ shared }, f) => {
		for (const key of shared.keys())
			rows.push({
				terms: [
					[built[f]!, 1],
					[once.get(key)!, -1],
				],
				low: undefined,
				high: 0,
			});
	});
	const users = new Map<string, number[]>();
	const use = (name: string, columns: readonly number[]) =>
		users.set(name, [...(users.get(name) ?? []), ...columns]);
	options.forEach(({ uses }, k) => {
		for (const name of uses) use(name, overlaid[k] === undefined ? [kept[k]!] : [kept[k]!, overlaid[k]]);
	});
	facilities.forEach(({ uses }, f) => {
		for (const name of uses) use(name, [built[f]!]);
	});
	for (const columns of users.values())
		if (columns.length > 1) rows.push({ terms: ones(columns), low: undefined, high: 1 });
	for (const [one, other] of terms.pairs)
		for (const lies of new Set(options.map((option) => option.lies))) {
			const same = (option: Option) => option.lies === lies;
			const [a, b] = [ofCircuit(one, same), ofCircuit(other, same)];
			if (a.length + b.length > 0) rows.push({ terms: [...ones(a), ...ones(b, -1)], low: 0, high: 0 });
		}
	return {
		program: { costs, upper: costs.map(() => 1), rows },
		options,
		facilities,
		optionColumn: (k) => kept[k]!,
		overlayColumn: (k) => overlaid[k],
		facilityColumn: (k) => built[k]!,
		modeColumn: (name) => mode.get(name)!,
	};
}

/** The program with some columns held at 0, or at 1. */
export function held(program: Program, off: readonly number[], on: readonly number[] = []): Program {
	const upper = program.upper.map((most, k) => (off.includes(k) ? 0 : most));
	const rows = on.map((k): ProgramRow => ({ terms: [[k, 1]], low: 1, high: 1 }));
	return { ...program, upper, rows: [...program.rows, ...rows] };
}
