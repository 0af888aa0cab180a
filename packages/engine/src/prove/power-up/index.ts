/** Power on in stages, each with what to connect, read and make sure of. */
export { powerUp } from "./stages.js";
export type { Stage, StageKind, StageReading } from "./types.js";
