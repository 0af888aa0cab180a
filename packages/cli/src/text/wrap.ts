/** Stands where a line must not be broken; shown as a space. */
export const GLUE = "\u00a0";

/** Breaks text into lines of at most `width` characters, between words where it can. At least one line. */
export function wrap(text: string, width: number): string[] {
	const lines: string[] = [];
	let line = "";
	for (const word of text.split(/[ \t\n]+/).filter((word) => word !== "")) {
		let rest = word;
		if (line !== "" && line.length + 1 + rest.length <= width) {
			line += ` ${rest}`;
			continue;
		}
		if (line !== "") lines.push(line);
		while (rest.length > width) {
			lines.push(rest.slice(0, width));
			rest = rest.slice(width);
		}
		line = rest;
	}
	if (line !== "" || lines.length === 0) lines.push(line);
	return lines.map((one) => one.replaceAll(GLUE, " "));
}

/** Text is not wrapped narrower than this, in characters. */
const NARROWEST = 10;

/** Text under a heading: every line starts `indent` characters in. */
export function indented(text: string, indent: number, columns: number): string {
	const width = Math.max(columns - indent, NARROWEST);
	return wrap(text, width)
		.map((line) => " ".repeat(indent) + line)
		.join("\n");
}

/** `name  text`, the text wrapped beside the name. */
export function named(
	name: string,
	text: string,
	columns: number,
	indent = 0,
	nameWidth = name.length,
): string {
	const start = indent + nameWidth + 2;
	return " ".repeat(indent) + name.padEnd(nameWidth + 2) + indented(text, start, columns).slice(start);
}
