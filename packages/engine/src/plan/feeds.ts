/** Which fuses feed with the key alone, and which always: read off the network, not off names. */
import { type Circuit, operate, settingsOf, voltsAt } from "../circuit/index.js";
import type { Feeds } from "./situation.js";

/** From this on a feed is live: common practice, no source. */
const LIVE_VOLTS = 6;

/**
 * Contacts behind fuses. Switched: dead in every listed condition with the key out and live in every other;
 * permanent: live in all of them. Conditions with the battery off say nothing.
 */
export function feedsOf(circuit: Circuit): Feeds {
	const { loom } = circuit;
	const keys = [...loom.parts.values()].filter(({ duty }) => duty === "start key");
	const outs = [...loom.contacts.values()].filter(
		({ part, role }) => role === "out" && loom.parts.get(part)?.kind === "fuse",
	);
	const live = new Map(outs.map(({ id }) => [id, { out: [] as boolean[], on: [] as boolean[] }]));
	for (const condition of loom.conditions.keys()) {
		const standing = circuit.standing(condition);
		const { volts } = operate(circuit, standing);
		const at = ({ id }: { id: string }) => Math.abs(voltsAt(volts, circuit.node(id)!));
		if (!outs.some((contact) => at(contact) >= LIVE_VOLTS)) continue;
		const settings = settingsOf(loom, condition);
		const out = keys.every(
			(key) => (settings.get(key.id) ?? key.positions[0]?.name) === key.positions[0]?.name,
		);
		for (const contact of outs) live.get(contact.id)![out ? "out" : "on"].push(at(contact) >= LIVE_VOLTS);
	}
	const which = (wanted: (seen: { out: boolean[]; on: boolean[] }) => boolean) =>
		new Set([...live].filter(([, seen]) => seen.on.length > 0 && wanted(seen)).map(([id]) => id));
	return {
		switched: which(({ out, on }) => keys.length > 0 && !out.includes(true) && !on.includes(false)),
		permanent: which(({ out, on }) => !out.includes(false) && !on.includes(false)),
	};
}
