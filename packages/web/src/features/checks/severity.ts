/** How grave a finding is, in words. */
import type { Finding } from "@loomwright/engine";

export interface SeverityWords {
	readonly severity: Finding["severity"];
	readonly word: string;
	readonly meaning: string;
}

export const SEVERITIES: readonly SeverityWords[] = [
	{ severity: "stop", word: "stop", meaning: "Do not cut or power up before this is mended." },
	{ severity: "warn", word: "mend", meaning: "Mend this before the car leaves." },
	{ severity: "note", word: "note", meaning: "Worth knowing." },
];

export const severityOf = (severity: Finding["severity"]): SeverityWords =>
	SEVERITIES.find((entry) => entry.severity === severity)!;
