import { randomBytes } from "node:crypto";

/** An id that no other entry has: 128 random bits, hexadecimal. */
export const newId = (): string => randomBytes(16).toString("hex");
