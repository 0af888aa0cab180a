import { didYouMean } from "../tables/index.js";
import { bad, good, type Parsed } from "../units/index.js";
import type { Place, RowKind } from "./loom-tables.js";
import { RESERVED } from "./words.js";

/** Letters of any language, digits and - _ / +. */
const NAME = /^[\p{L}\p{N}_/+-]+$/u;

/** A name of a part, joint or wire. */
export function parseName(text: string): Parsed<string> {
	if (RESERVED.includes(text)) return bad(`"${text}" has a meaning of its own`, "another name");
	if (NAME.test(text)) return good(text);
	return bad(`"${text}" is not a name`, "letters, digits and - _ / + only, without spaces");
}

/** Which row says what: names of each kind with the row that gives them. */
export class Names {
	private readonly places = new Map<RowKind, Map<string, Place>>();
	/** Kinds of which some rows could not be read: a name unknown there may only seem so. */
	private readonly uncertain = new Set<RowKind>();

	/** Enters a name; the row that has it already, if one does. */
	claim(kind: RowKind, name: string, place: Place): Place | undefined {
		const taken = this.find(kind, name);
		if (taken) return taken;
		const names = this.places.get(kind) ?? new Map<string, Place>();
		this.places.set(kind, names.set(name, place));
		return undefined;
	}

	find(kind: RowKind, name: string): Place | undefined {
		return this.places.get(kind)?.get(name);
	}

	all(kind: RowKind): Iterable<string> {
		return this.places.get(kind)?.keys() ?? [];
	}

	doubt(kind: RowKind): void {
		this.uncertain.add(kind);
	}

	/** Whether a name is of one of these kinds, or may be, a table of theirs being unreadable. */
	mayKnow(kinds: readonly RowKind[], name: string): boolean {
		return kinds.some((kind) => this.uncertain.has(kind) || this.find(kind, name) !== undefined);
	}

	/** What is wanted in place of an unknown name. */
	wanted(kinds: readonly RowKind[], name: string, otherwise: string): string {
		return didYouMean(
			name,
			kinds.flatMap((kind) => [...this.all(kind)]),
			otherwise,
		);
	}
}

/** A place in words: `wires.csv, row 4`. */
export function placeWords(place: Place): string {
	return `${place.file}, row ${place.row}`;
}
