/** Names of the points of the network. */

/** The car's body metal: the reference of all potentials. */
export const BODY = "@body";
export const ENGINE_METAL = "@engine";

/** The loom's terminal in the cavity: where a meter is back-probed. */
export const terminalNode = (contact: string): string => contact;
/** The part's own side of the contact. */
export const pinNode = (contact: string): string => `${contact}!pin`;
export const jointNode = (joint: string): string => joint;
export const wireEndNode = (wire: string, end: "from" | "to"): string => `${wire}@${end}`;
export const insideNode = (part: string, name: string): string => `${part}#${name}`;
