/**
 * Who may import whom. Packages: linalg, engine, papers, then the shells. Rooms of the engine: one line, each
 * importing only rooms before it; rooms that stand side by side do not import each other.
 */
import { posix } from "node:path";
import { readModule } from "./imports.js";

/** The packages each package may import. */
const PACKAGES: Readonly<Record<string, readonly string[]>> = {
	linalg: [],
	engine: ["linalg"],
	papers: ["linalg", "engine"],
	shop: ["linalg", "engine", "papers"],
	web: ["linalg", "engine", "papers"],
	cli: ["linalg", "engine", "papers", "shop"],
};

/** The rooms of the engine, first to last; those in one row stand side by side. */
const ROOMS: readonly (readonly string[])[] = [
	["units"],
	["tables"],
	["loom"],
	["recipe"],
	["devices"],
	["circuit"],
	["batches"],
	["readings"],
	["rules", "faults"],
	["sizing"],
	["effects"],
	["plan"],
	["prove", "find"],
	["job"],
	["days"],
];

/** These compute only: no host, no clock, no chance. */
const HOSTLESS: ReadonlySet<string> = new Set(["linalg", "engine"]);

/** A source file: its path from the root of the tree, with slashes, and its text. */
export interface SourceFile {
	readonly path: string;
	readonly text: string;
}

const rankOf = (room: string): number => ROOMS.findIndex((row) => row.includes(room));

/** @returns the room of a path inside `src/`, empty for a file directly in `src/` */
const roomOf = (inside: string): string => (inside.includes("/") ? (inside.split("/")[0] as string) : "");

/** What is wrong with an import inside one package; undefined when nothing is. */
function roomProblem(from: string, to: string): string | undefined {
	const [room, other] = [roomOf(from), roomOf(to)];
	if (room === "" || room === other) return undefined;
	if (other === "") return `room ${room} imports ${to}, which stands above the rooms`;
	if (rankOf(other) < rankOf(room)) return undefined;
	return `room ${room} imports room ${other}, which does not stand before it`;
}

/** What is wrong with one import; undefined when nothing is. */
function importProblem(pack: string, inside: string, target: string, typeOnly: boolean): string | undefined {
	if (target.startsWith("node:") && HOSTLESS.has(pack)) return `${pack} imports ${target}, but computes only`;
	if (target.startsWith("@loomwright/")) {
		const other = target.split("/")[1] as string;
		if (PACKAGES[pack]?.includes(other) || (typeOnly && pack === "web" && other === "shop")) return undefined;
		return `package ${pack} imports package ${other}, which does not stand before it`;
	}
	if (!target.startsWith(".")) return undefined;
	const to = posix.join(posix.dirname(inside), target);
	if (to.startsWith("..")) return `imports ${target}, which lies outside its package's src`;
	return pack === "engine" ? roomProblem(inside, to) : undefined;
}

/**
 * The breaches of the layer rule in a set of files under `packages/NAME/src/`, tests left out.
 *
 * @returns one sentence each, beginning with `path:line:`
 */
export function layerProblems(files: readonly SourceFile[]): string[] {
	const problems: string[] = [];
	for (const { path, text } of files) {
		const [, pack, inside] = /^packages\/([^/]+)\/src\/(.+)$/.exec(path) ?? [];
		if (pack === undefined || inside === undefined || /\.(test|test-helper)\.tsx?$/.test(inside)) continue;
		if (!(pack in PACKAGES))
			problems.push(`${path}:1: package ${pack} has no place in scripts/rules/layers.ts`);
		const room = pack === "engine" ? roomOf(inside) : "";
		if (room !== "" && rankOf(room) < 0)
			problems.push(`${path}:1: room ${room} has no place in scripts/rules/layers.ts`);
		const { imports, hostNames } = readModule(path, text);
		for (const { target, line, typeOnly } of imports) {
			const problem = importProblem(pack, inside, target, typeOnly);
			if (problem) problems.push(`${path}:${line}: ${problem}`);
		}
		if (HOSTLESS.has(pack))
			for (const { name, line } of hostNames)
				problems.push(`${path}:${line}: ${pack} uses ${name}, but computes only`);
	}
	return problems;
}
