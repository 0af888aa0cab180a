/** Histories for tests, without a database. */
import type { Entry, Standing } from "../store/entry/append.js";
import type { AcceptedFinding, Written } from "../store/entry/kinds.js";

export interface Line {
	readonly by: string;
	/** Left out: all before it. */
	readonly seen?: number;
	readonly device?: string;
	readonly counter?: number;
	readonly time?: string;
	readonly standing?: Standing;
}

/** Entries e1, e2, ... in the order given. */
export function history(...lines: readonly (readonly [Line, Written])[]): Entry[] {
	return lines.map(([{ by, seen, device, counter = 0, time = "", standing }, written], at) => ({
		...written,
		...{ id: `e${at + 1}`, place: at + 1, time, stored: "", person: by, account: by.toLowerCase() },
		...{ device: device ?? (counter > 0 ? by : ""), counter, seen: seen ?? at },
		...{ standing: standing ?? null, previous: "", hash: "" },
	}));
}

export const done = (step: string): Written => ({ kind: "step", body: { step } });
export const signed = (step: string): Written => ({ kind: "sign-off", body: { step } });
export const takenBack = (of: string): Written => ({ kind: "correction", body: { of, text: "mistaken" } });
export const held = (step?: string): Written => ({ kind: "hold", body: { text: "wrong part", step } });
export const lifted = (hold: string): Written => ({ kind: "lift", body: { hold, text: "part came" } });

/** A finding as someone accepted it. */
export const FOUND: Omit<AcceptedFinding, "text"> = {
	of: "converted",
	finding: {
		...{ rule: "idle-fuse", severity: "note" as const, where: "F9", why: "No part is left behind it." },
		...{ mend: "Take it out.", path: ["F9"], cautions: [] },
	},
	grounds: ["F9: fuse, amps 10"],
};

export const accepted = (text: string): Written => ({ kind: "acceptance", body: { ...FOUND, text } });
