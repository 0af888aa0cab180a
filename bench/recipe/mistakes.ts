/**
 * Random wiring mistakes of a recipe: one step done otherwise than written, or one part fitted of another kind or value.
 *
 * Each kind draws at random from what the car has and says what it did. A draw that makes no sense (nothing to swap with)
 * gives undefined and is drawn anew by the caller.
 */
import type {
	Loom,
	LoomTables,
	Part,
	RecipeStep,
	RecipeTable,
} from "../../packages/engine/src/loom/index.js";

/** A recipe with one mistake, and parts of the converted car that are not as the tables say. */
export interface Mistake {
	readonly kind: string;
	readonly text: string;
	readonly recipe: RecipeTable;
	readonly parts: ReadonlyMap<string, Part>;
}

export interface Draw {
	readonly tables: LoomTables;
	readonly converted: Loom;
	/** Uniform on [0, 1). */
	readonly random: () => number;
}

type Maker = (draw: Draw) => Mistake | undefined;

const NONE: ReadonlyMap<string, Part> = new Map();
/** Wire sizes on the shelf in mm2, blade fuses in amperes: common practice, no source. */
const SIZES = [0.22, 0.35, 0.5, 0.75, 1, 1.5, 2.5, 4, 6];
const FUSES = [3, 5, 7.5, 10, 15, 20, 25, 30, 40];
/** Steps that join something to a place named in `to`. */
const ENDING = ["extend", "add wire", "bridge", "tie to ground", "move terminal"];
/** Steps that take a loose wire in hand. */
const LOOSE = ["extend", "join", "isolate and stow", "tie to ground"];

function pick<T>(random: () => number, list: readonly T[]): T | undefined {
	return list[Math.floor(random() * list.length)];
}

const steps = ({ tables }: Draw, kinds: readonly string[]) =>
	tables.recipe.filter((step) => kinds.includes(step.kind));

function changed(draw: Draw, kind: string, text: string, ...now: readonly RecipeStep[]): Mistake {
	const byStep = new Map(now.map((step) => [step.step, step]));
	const recipe = draw.tables.recipe.map((step) => byStep.get(step.step) ?? step);
	return { kind, text, recipe, parts: NONE };
}

function leftOut(draw: Draw, kind: string, from: readonly RecipeStep[]): Mistake | undefined {
	const step = pick(draw.random, from);
	if (step === undefined) return undefined;
	const recipe = draw.tables.recipe.filter((one) => one !== step);
	return { kind, text: `step ${step.step} (${step.title}) left out`, recipe, parts: NONE };
}

function to(draw: Draw, kind: string, step: RecipeStep | undefined, place: string | undefined) {
	if (step === undefined || place === undefined || place === step.to) return undefined;
	return changed(draw, kind, `step ${step.step}: to ${place} instead of ${step.to}`, { ...step, to: place });
}

function partAs(draw: Draw, kind: string, part: Part, text: string, now: Partial<Part>): Mistake {
	return { kind, text, recipe: draw.tables.recipe, parts: new Map([[part.id, { ...part, ...now }]]) };
}

const wrongCavity: Maker = (draw) => {
	const step = pick(draw.random, steps(draw, ENDING));
	const contacts = new Map([...draw.tables.delivered.contacts, ...draw.tables.newParts.contacts]);
	const meant = contacts.get(step?.to ?? "");
	if (meant === undefined) return undefined;
	const near = [...contacts.values()].filter((one) =>
		meant.connector !== "" ? one.connector === meant.connector : one.part === meant.part,
	);
	return to(draw, "wrong cavity", step, pick(draw.random, near)?.id);
};

const stepLeftOut: Maker = (draw) =>
	leftOut(
		draw,
		"step left out",
		draw.tables.recipe.filter((step) => step.kind !== "isolate and stow"),
	);

const notIsolated: Maker = (draw) => leftOut(draw, "isolation missing", steps(draw, ["isolate and stow"]));

/** Two loose wires taken for each other. */
const wrongWire: Maker = (draw) => {
	const [one, two] = [pick(draw.random, steps(draw, LOOSE)), pick(draw.random, steps(draw, LOOSE))];
	if (one === undefined || two === undefined || one === two || one.wire === "" || two.wire === "")
		return undefined;
	if (one.kind === two.kind && one.kind === "isolate and stow") return undefined;
	const text = `steps ${one.step} and ${two.step}: ${one.wire} and ${two.wire} taken for each other`;
	return changed(draw, "wrong wire", text, { ...one, wire: two.wire }, { ...two, wire: one.wire });
};

/** The far ends of two new wires changed over. */
const swappedPair: Maker = (draw) => {
	const from = pick(draw.random, steps(draw, ENDING));
	const near = steps(draw, ENDING).filter(
		(step) => step !== from && step.to.split(".")[0] === from?.to.split(".")[0],
	);
	const other = pick(draw.random, near);
	if (from === undefined || other === undefined) return undefined;
	const text = `steps ${from.step} and ${other.step}: ends ${from.to} and ${other.to} changed over`;
	return changed(draw, "pair swapped", text, { ...from, to: other.to }, { ...other, to: from.to });
};

const wrongSize: Maker = (draw) => {
	const step = pick(draw.random, steps(draw, ["extend", "add wire", "tie to ground", "bridge"]));
	const mm2 = pick(draw.random, SIZES);
	if (step === undefined || mm2 === undefined || mm2 === step.mm2) return undefined;
	return changed(draw, "wrong size", `step ${step.step}: ${mm2} mm2`, { ...step, mm2 });
};

const wrongGround: Maker = (draw) => {
	const grounds = [...draw.converted.joints.values()].filter((joint) => joint.kind === "ground");
	return to(
		draw,
		"wrong ground",
		pick(draw.random, steps(draw, ["tie to ground"])),
		pick(draw.random, grounds)?.id,
	);
};

/** A wire that belongs on a unit's pin or a switch is bolted to the nearest ground instead. */
const groundInstead: Maker = (draw) => {
	const grounds = [...draw.converted.joints.values()].filter((joint) => joint.kind === "ground");
	return to(
		draw,
		"ground instead",
		pick(draw.random, steps(draw, ["extend", "add wire"])),
		pick(draw.random, grounds)?.id,
	);
};

/** Led to a rail or splice that is not meant. */
const wrongSupply: Maker = (draw) => {
	const places = [...draw.tables.delivered.joints.values()].filter((joint) => joint.kind !== "ground");
	return to(
		draw,
		"tied to a wrong rail or splice",
		pick(draw.random, steps(draw, ["extend", "add wire"])),
		pick(draw.random, places)?.id,
	);
};

/** The wrong wire of the branch is cut, tapped or taken off. */
const wrongOldWire: Maker = (draw) => {
	const { delivered } = draw.tables;
	const step = pick(
		draw.random,
		draw.tables.recipe.filter((one) => one.at !== undefined),
	);
	if (step === undefined) return undefined;
	const column = step.kind === "join" ? "other" : "wire";
	const meant = delivered.wires.get(step[column]);
	if (meant === undefined) return undefined;
	const near = [...delivered.wires.values()].filter((wire) => wire !== meant && wire.bundle === meant.bundle);
	const wire = pick(draw.random, near)?.id;
	if (wire === undefined) return undefined;
	const text = `step ${step.step}: ${wire} worked on instead of ${step[column]}`;
	return changed(draw, "wrong old wire", text, { ...step, [column]: wire });
};

/** A terminal taken out of the wrong cavity. */
const wrongTerminal: Maker = (draw) => {
	const step = pick(draw.random, steps(draw, ["move terminal"]));
	const meant = draw.tables.delivered.contacts.get(step?.from ?? "");
	if (step === undefined || meant === undefined) return undefined;
	const inLine = meant.connector === "";
	const near = [...draw.tables.delivered.contacts.values()].filter((one) =>
		inLine ? one.part === meant.part : one.connector === meant.connector,
	);
	const from = pick(draw.random, near)?.id;
	if (from === undefined || from === step.from) return undefined;
	return changed(draw, "wrong terminal moved", `step ${step.step}: ${from} instead of ${step.from}`, {
		...step,
		from,
	});
};

const fuseValue: Maker = (draw) => {
	const fuse = pick(
		draw.random,
		[...draw.converted.parts.values()].filter(
			(part) => part.kind === "fuse" && (part.values.amps ?? 0) <= 40,
		),
	);
	const amps = pick(draw.random, FUSES);
	if (fuse === undefined || amps === undefined || amps === fuse.values.amps) return undefined;
	return partAs(draw, "fuse value", fuse, `${fuse.id}: ${amps} A instead of ${fuse.values.amps} A`, {
		values: { ...fuse.values, amps },
	});
};

/** A switch that opens where it should close. */
const wrongSwitch: Maker = (draw) => {
	const fitted = [...draw.tables.newParts.parts.values()].filter((part) => part.kind === "switch");
	const part = pick(draw.random, fitted);
	if (part === undefined || part.positions.length < 2) return undefined;
	const joins = part.positions.map((position) => position.joins).reverse();
	const positions = part.positions.map((position, k) => ({ ...position, joins: joins[k]! }));
	return partAs(draw, "wrong switch fitted", part, `${part.id}: opens where it should close`, { positions });
};

const wrongBusEnd: Maker = (draw) => {
	const part = pick(
		draw.random,
		[...draw.tables.newParts.parts.values()].filter((one) => one.kind === "bus end"),
	);
	const ohms = pick(draw.random, [60, 100, 150, 240, 1000]);
	if (part === undefined || ohms === undefined) return undefined;
	return partAs(draw, "wrong part value", part, `${part.id}: ${ohms} ohm`, {
		values: { ...part.values, ohms },
	});
};

/** Another part of the same place taken out. */
const wrongPart: Maker = (draw) => {
	const step = pick(draw.random, steps(draw, ["remove part"]));
	const meant = draw.tables.delivered.parts.get(step?.part ?? "");
	if (step === undefined || meant === undefined) return undefined;
	const near = [...draw.tables.delivered.parts.values()].filter(
		(part) => part !== meant && part.place.split(",")[0] === meant.place.split(",")[0],
	);
	const part = pick(draw.random, near)?.id;
	if (part === undefined) return undefined;
	return changed(draw, "wrong part taken out", `step ${step.step}: ${part} instead of ${step.part}`, {
		...step,
		part,
	});
};

export const makers: readonly Maker[] = [
	wrongCavity,
	stepLeftOut,
	notIsolated,
	wrongWire,
	swappedPair,
	wrongSize,
	wrongGround,
	groundInstead,
	wrongSupply,
	wrongOldWire,
	wrongTerminal,
	fuseValue,
	wrongSwitch,
	wrongBusEnd,
	wrongPart,
];

/** One mistake of a kind drawn at random. */
export function drawMistake(draw: Draw): Mistake | undefined {
	return pick(draw.random, makers)?.(draw);
}
