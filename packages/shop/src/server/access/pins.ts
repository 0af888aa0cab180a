/**
 * PINs by Argon2id (RFC 9106), with memory, passes and lanes after the OWASP Password Storage Cheat Sheet
 * (19 MiB, 2, 1).
 */
import { hash, verify } from "@node-rs/argon2";
import { z } from "zod";

const SETTINGS = { memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

export const pinSchema = z
	.string()
	.regex(/^\d{6,12}$/, "6 to 12 digits")
	.refine(
		(pin) => !/^(\d)\1*$/.test(pin) && !"01234567890123456789".includes(pin),
		"not all alike, nor counted up",
	);

export const hashPin = (pin: string): Promise<string> => hash(pin, SETTINGS);

/** Compared with where there is no such person, so that it takes as long. */
let nobody: Promise<string> | undefined;

/** @param stored left out: there is no such person */
export async function pinFits(stored: string | undefined, pin: string): Promise<boolean> {
	nobody ??= hashPin("no such person");
	const fits = await verify(stored ?? (await nobody), pin);
	return stored !== undefined && fits;
}
