/**
 * V8 compiles a function for speed after so much work in it; by default so early that, of a command's one or two
 * seconds, a third goes into code that is soon thrown away and made again. Said later, long work loses nothing.
 * Only a matter of speed: a V8 that does not know the flag says so and works as before.
 */
import { setFlagsFromString } from "node:v8";

/** Bytes of bytecode run in a function before it is looked at; V8's own: 67,584 (`node --v8-options`, Node 20). */
const BYTES = 400_000;

setFlagsFromString(`--interrupt-budget=${BYTES}`);
