import type { Terminal } from "../terminal.js";

/** ISO 6429 (ECMA-48) renditions. */
const RENDITIONS = { bold: 1, red: 31, yellow: 33 } as const;

/** The text in a rendition where the terminal shows colours, else as it is. */
export const paint = (terminal: Terminal, how: keyof typeof RENDITIONS, text: string): string =>
	terminal.colour ? `\u001b[${RENDITIONS[how]}m${text}\u001b[0m` : text;
