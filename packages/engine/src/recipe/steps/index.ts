import type { StepDefinition, StepKind } from "../step-definition.js";
import { addWire } from "./add-wire.js";
import { bridge } from "./bridge.js";
import { cut } from "./cut.js";
import { extend } from "./extend.js";
import { fitPart } from "./fit-part.js";
import { isolateAndStow } from "./isolate-and-stow.js";
import { join } from "./join.js";
import { moveTerminal } from "./move-terminal.js";
import { removePart } from "./remove-part.js";
import { tieToGround } from "./tie-to-ground.js";

/** Every kind of step. */
export const steps: Readonly<Record<StepKind, StepDefinition>> = {
	cut,
	extend,
	join,
	"move terminal": moveTerminal,
	"add wire": addWire,
	"tie to ground": tieToGround,
	bridge,
	"remove part": removePart,
	"fit part": fitPart,
	"isolate and stow": isolateAndStow,
};

export const stepKinds = Object.keys(steps) as StepKind[];
