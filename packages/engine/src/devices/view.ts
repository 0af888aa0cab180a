/** A device as it stands in one condition, for its kind's `build`. */
import type { Contact, Part } from "../loom/index.js";
import type { DeviceKind, DeviceView } from "./types.js";

/** The state a part or pin is in where no condition says otherwise. */
export function defaultState(kind: DeviceKind, part: Part): string {
	const states = kind.states(part);
	return "unit" in states ? String(states.default) : (states[0] ?? "");
}

/**
 * @param contacts the part's contacts in table order
 * @param settings the condition's settings with those it is like already merged
 * @param pin gives the node of the part's own side of a contact
 */
export function deviceView(
	kind: DeviceKind,
	part: Part,
	contacts: readonly Contact[],
	settings: ReadonlyMap<string, string>,
	pin: (contact: string) => string,
): DeviceView {
	const byRole = new Map<string, Contact[]>();
	for (const contact of contacts) {
		const list = byRole.get(contact.role);
		if (list) list.push(contact);
		else byRole.set(contact.role, [contact]);
	}
	const need = (found: number | undefined, name: string): number => {
		if (found === undefined) throw new Error(`${part.id}: kind '${kind.kind}' has no value '${name}'`);
		return found;
	};
	return {
		part,
		state: settings.get(part.id) ?? defaultState(kind, part),
		withRole: (role) => byRole.get(role) ?? [],
		pinOf(role) {
			const contact = byRole.get(role)?.[0];
			return contact && pin(contact.id);
		},
		value: (name) => need(part.values[name] ?? kind.values[name]?.default, name),
		pinValue: (contact, name) =>
			need(
				contact.values[name] ?? kind.pinValues?.[contact.role]?.[name]?.default,
				`${contact.role} ${name}`,
			),
		pinState: (contact) => settings.get(contact.id) ?? kind.pinStates?.(contact)[0] ?? "",
	};
}
