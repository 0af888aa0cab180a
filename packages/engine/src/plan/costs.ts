/** What work, material and joints cost where the car's own costs.csv does not say. All: common practice, no source. */
import type { CostRow, CostTable, Price } from "./types.js";

const row = (minutes: number, price: number, value: number, what: string): CostRow => ({
	minutes,
	price,
	value,
	note: `${what}; common practice, no source`,
});

/** The items of costs.csv. */
export const DEFAULT_COSTS: CostTable = new Map([
	["hour", row(0, 60, 0, "price of an hour of the shop: turns material into minutes")],
	["wire", row(8, 0.15, 0, "laying a metre of new wire, and its price but for the copper")],
	["copper", row(0, 0.35, 0, "price of a metre for each mm2")],
	["crimp", row(2, 0.5, 0, "terminal on a wire end and into its cavity")],
	["ring", row(3, 0.6, 0, "ring terminal on a wire end and onto its ground point")],
	["de-pin", row(2, 0, 0, "terminal out of its cavity")],
	["move terminal", row(4, 0, 0, "terminal out of one cavity into another of the same housing")],
	["cut", row(1, 0, 0, "wire found and cut")],
	["splice", row(5, 0.9, 0, "ends stripped, joined, sealed and tested by pull")],
	["isolate", row(2, 0.2, 0, "loose lead isolated and tied back")],
	["open", row(3, 0, 0, "housing reached, unlocked and closed again; once for all work in it")],
	["fit", row(5, 0, 0, "part fitted")],
	["remove", row(5, 0, 0, "part taken out")],
	["passage", row(40, 2, 0, "way made through a wall between two zones and sealed; once for all wires")],
	["joint risk", row(6, 0, 0, "minutes of fault finding that a joint makes likely")],
	["most joints", row(0, 0, 2, "joints in one circuit")],
	["reach", row(0, 0, 0.15, "metres that two ends may lie apart and still be joined directly")],
	["spare length", row(0, 0, 0.15, "metres added to each new wire")],
	["overlay loom", row(60, 10, 0, "second loom drawn, made on the bench, wrapped and fastened")],
	["overlay share", row(0, 0, 0.6, "of the laying time of a wire, where it lies in a second loom")],
	["new loom", row(480, 40, 0, "old loom out, new one drawn, checked on the bench and fastened")],
	["new loom share", row(0, 0, 0.3, "of the laying time of a wire, where the whole loom is made anew")],
]);

export const NOTHING: Price = { minutes: 0, material: 0, risk: 0 };

export const plus = (a: Price, b: Price): Price => ({
	minutes: a.minutes + b.minutes,
	material: a.material + b.material,
	risk: a.risk + b.risk,
});

export const times = (a: Price, factor: number): Price => ({
	minutes: a.minutes * factor,
	material: a.material * factor,
	risk: a.risk * factor,
});

/** Prices and limits out of the table, a row for a zone going before the general one. */
export class Costs {
	readonly #table: CostTable;

	constructor(table: CostTable) {
		this.#table = table;
	}

	row(item: string, zone = ""): CostRow {
		const found = this.#table.get(`${item} ${zone}`) ?? this.#table.get(item) ?? DEFAULT_COSTS.get(item);
		if (found === undefined) throw new RangeError(`there is no cost item ${item}`);
		return found;
	}

	work(item: string, zone = ""): Price {
		const { minutes, price } = this.row(item, zone);
		return { minutes, material: price, risk: 0 };
	}

	/** A joint made: its work, and the fault finding that it makes likely in its zone. */
	joint(zone: string): Price {
		return { ...this.work("splice"), risk: this.row("joint risk", zone).minutes };
	}

	newWire(mm2: number, metres: number): Price {
		const { minutes, price } = this.row("wire");
		return {
			minutes: minutes * metres,
			material: (price + this.row("copper").price * mm2) * metres,
			risk: 0,
		};
	}

	/** True where a wall stands between two zones. */
	isWall(one: string, other: string): boolean {
		return this.#table.has(`passage ${wallName(one, other)}`);
	}

	passage(one: string, other: string): Price {
		return this.work("passage", wallName(one, other));
	}

	/** All of a price in minutes. */
	total({ minutes, material, risk }: Price): number {
		const { price } = this.row("hour");
		return minutes + risk + (price > 0 ? (material * 60) / price : 0);
	}
}

/** Two zones in alphabetical order: `cabin/engine bay`. */
export const wallName = (one: string, other: string): string => [one, other].sort().join("/");
