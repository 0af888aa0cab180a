/** Where something touches a contact: at the loom's terminal where plugs will be pulled, else at the part's pin. */
import { pinNode } from "../circuit/index.js";
import type { FaultContext } from "./types.js";

export function sideOf({ circuit, plugsOff }: FaultContext, contact: string): number | undefined {
	return (plugsOff ? undefined : circuit.node(pinNode(contact))) ?? circuit.node(contact);
}
