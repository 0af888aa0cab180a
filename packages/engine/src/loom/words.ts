/** Closed lists of words (docs/tables.md). A misspelt one would silently switch off a caution or a rule, so it is an error. */

/** What a part can be marked with. */
export const MARKS: readonly string[] = [
	"pyrotechnic",
	"high voltage",
	"wet",
	"no joints",
	"fitted by hand",
	"unsealed",
];

/** What rules and functions must know a part by. */
export const DUTIES: readonly string[] = [
	"clutch switch",
	"neutral switch",
	"reversing switch",
	"reversing lamp",
	"brake switch",
	"brake lamp",
	"start key",
	"starter",
	"bus end",
	"selector",
];

/** Words that mean something in a cell and so cannot be names: loose wire ends, ends of a wire, condition heads. */
export const RESERVED: readonly string[] = ["cut", "stowed", "from", "to", "like"];
