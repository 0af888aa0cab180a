/** Text in a drawing: widths are reckoned, not measured, so that layout needs no screen. */
import type { ReactNode } from "react";

/** Mean glyph widths at 13 px of common system fonts, on the wide side. */
const NAME_EM = 8.2;
const LABEL_EM = 7.1;

/** Widths in drawing units; whole and even, since the layout rounds what stands in the middle of them. */
export const nameWidth = (text: string): number => even(text.length * NAME_EM);
export const labelWidth = (text: string): number => even(text.length * LABEL_EM);

const even = (width: number) => 2 * Math.ceil(width / 2);

/** Cut at a word where possible, with an ellipsis. */
export function clip(text: string, most: number): string {
	if (text.length <= most) return text;
	const cut = text.slice(0, most - 1);
	const space = cut.lastIndexOf(" ");
	return `${space > most / 2 ? cut.slice(0, space) : cut}…`;
}

/** In at most so many lines of at most so many letters. */
export function wrap(text: string, most: number, lines: number): string[] {
	const out: string[] = [];
	let line = "";
	for (const word of text.split(/\s+/).filter(Boolean)) {
		const longer = line === "" ? word : `${line} ${word}`;
		if (longer.length <= most || line === "") line = longer;
		else {
			out.push(line);
			line = word;
		}
	}
	if (line !== "") out.push(line);
	const kept = out.slice(0, lines).map((l) => clip(l, most));
	if (out.length > lines) kept[lines - 1] = clip(`${kept[lines - 1]} ${out[lines]}`, most);
	return kept;
}

interface PlacedText {
	readonly x: number;
	readonly y: number;
	readonly anchor?: "start" | "middle" | "end";
	readonly children: ReactNode;
}

export const Name = ({ x, y, anchor = "start", children }: PlacedText) => (
	<text className="draw-name" x={x} y={y} textAnchor={anchor}>
		{children}
	</text>
);

export const Label = ({ x, y, anchor = "start", children }: PlacedText) => (
	<text className="draw-label" x={x} y={y} textAnchor={anchor}>
		{children}
	</text>
);
