/** What a meter can be set to, in words. */
import type { What } from "@loomwright/engine";

export const WHATS: readonly { readonly value: What; readonly label: string }[] = [
	{ value: "volts", label: "Volts" },
	{ value: "drop", label: "Voltage drop" },
	{ value: "ohms", label: "Ohms" },
	{ value: "amps", label: "Amps" },
];

export const whatOf = (text: string): What => WHATS.find(({ value }) => value === text)?.value ?? "volts";

export const unitOf = (what: What) =>
	({ volts: "V", drop: "V", ohms: "ohm", amps: "A" })[what] as "V" | "ohm" | "A";
