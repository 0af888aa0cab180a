/** Links by which a guest looks at one job until they end. */
import { ask, at, sent } from "./api.js";

export interface GuestLink {
	readonly id: string;
	/** Whom it is for. */
	readonly name: string;
	readonly madeBy: string;
	/** ISO 8601, UTC. */
	readonly ends: string;
}

export const readGuests = async (job: string): Promise<readonly GuestLink[]> =>
	(await ask<{ guests: GuestLink[] }>(`${at(job)}/guests`)).guests;

/** The token is told this once. */
export const addGuest = (
	job: string,
	given: { readonly name: string; readonly ends: string },
): Promise<GuestLink & { readonly token: string }> => ask(`${at(job)}/guests`, sent("POST", given));

export const endGuest = (job: string, link: string): Promise<unknown> =>
	ask(`${at(job)}/guests/${encodeURIComponent(link)}`, sent("DELETE"));
