/** The kinds of device. A new kind is one new file and one line here. */
import { battery } from "./battery.js";
import { busEnd } from "./bus-end.js";
import { connector } from "./connector.js";
import { controlUnit } from "./control-unit/index.js";
import { diode, led } from "./diode.js";
import { fuse } from "./fuse.js";
import { generator } from "./generator.js";
import { ignitionCoil } from "./ignition-coil.js";
import { lamp } from "./lamp.js";
import { module } from "./module.js";
import { positionSensor } from "./position-sensor.js";
import { relay } from "./relay.js";
import { hallSensor, lambdaSensor, potentiometer, ratioSensor, thermistor } from "./sensors.js";
import { starter } from "./starter.js";
import { switchKind } from "./switch.js";
import { coil, coilSensor, heater, igniter, injector, motor, resistor } from "./two-pin.js";
import type { DeviceKind } from "./types.js";

const all: readonly DeviceKind[] = [
	battery,
	busEnd,
	coil,
	coilSensor,
	connector,
	controlUnit,
	diode,
	fuse,
	generator,
	hallSensor,
	heater,
	igniter,
	ignitionCoil,
	injector,
	lambdaSensor,
	lamp,
	led,
	module,
	motor,
	positionSensor,
	potentiometer,
	ratioSensor,
	relay,
	resistor,
	starter,
	switchKind,
	thermistor,
];

export const deviceKinds: ReadonlyMap<string, DeviceKind> = new Map(all.map((kind) => [kind.kind, kind]));

export { checkDevices, stateFault } from "./check.js";
export { isLimited } from "./control-unit/index.js";
export { inrushAmps } from "./lamp.js";
export type {
	AutomatonSpec,
	BranchSpec,
	BranchState,
	DeviceKind,
	DeviceView,
	NetworkBuilder,
	NodeName,
	NumberState,
	Owner,
	ValueRule,
} from "./types.js";
export { deviceView } from "./view.js";
