/** A browser's worker at the working end. */
import { serveBatches } from "@loomwright/engine";

serveBatches(self as unknown as Parameters<typeof serveBatches>[0]);
